//! What was found: proposals side by side, their figures, the trade-off; or what would have to give.
use super::form::PICK;
use super::tradeoff::{self, Point};
use super::words;
use super::{PROPOSALS, Page};
use crate::design::Design;
use crate::pages::Reader;
use crate::pages::document::{Act, Block, Cell, Entry, Field, Figure, Fold, Table, Text};
use crate::quantity::{System, capital};
use crate::report::search::{Kept, Measure, Pick, Search, Stance};
use crate::share::link;

/// Figures that are shown of every table, where they are known.
const COLUMNS: [Measure; 10] = Measure::ALL;

/// All that is known of a search.
pub(super) fn found(page: &Page, search: &Search, reader: &Reader) -> Vec<Block> {
    let picks = search.picks(PROPOSALS);
    let mut blocks = vec![Block::heading(title(search, picks.len()))];
    blocks.push(Block::note(count(search)));
    if picks.is_empty() {
        blocks.extend(nothing(search, reader.system));
    } else {
        let cards = (1..)
            .zip(&picks)
            .map(|(number, pick)| card(page, search, (number, pick), &picks, reader))
            .collect();
        blocks.push(Block::Group("proposals", cards));
        blocks.push(figures(search, &picks, reader.system));
        blocks.push(Block::Group("tradeoff", trade(page, search, &picks, reader)));
    }
    blocks.extend(ruled_out(search));
    blocks
}

fn title(search: &Search, proposals: usize) -> String {
    match (search.is_over(), proposals) {
        (false, 0) if search.is_loosening() => {
            "Nothing keeps all limits: looking for what would have to give".into()
        }
        (false, 0) => "Looking".into(),
        (false, _) => "Best so far".into(),
        (true, 0) => "Nothing keeps all limits".into(),
        (true, 1) => "One table".into(),
        (true, _) => format!("{proposals} tables, none better than another in everything"),
    }
}

fn count(search: &Search) -> String {
    let count = search.count();
    let kept = search.front().kept().len();
    format!(
        "{} of {} combinations done with, {} of them analysed to the end; {} kept.",
        count.settled, count.all, count.judged, kept
    )
}

/// Whether a figure says anything: cost where prices were entered, misses where something is missed.
fn matters(search: &Search, measure: Measure) -> bool {
    let kept = search.front().kept();
    match measure {
        Measure::Cost | Measure::Height | Measure::Deck => {
            kept.iter().any(|one| one.figures.of(measure) > 1e-9)
        }
        _ => true,
    }
}

fn figure(page: &Page, kept: &Kept, label: String) -> Option<Block> {
    let drawing = page.drawn.get(&kept.at).filter(|drawing| drawing.width > 0.0)?;
    Some(Block::Figure(Figure {
        marks: drawing.marks.clone(),
        width: drawing.width,
        height: drawing.height,
        label,
        caption: Text::default(),
        true_scale: false,
    }))
}

fn open(design: &Design) -> Block {
    Block::Acts(vec![Act::Open { words: "Open it and go on by hand".into(), link: link::encode(design) }])
}

fn card(
    page: &Page,
    search: &Search,
    (number, pick): (usize, &Pick),
    picks: &[Pick],
    reader: &Reader,
) -> Block {
    let name = format!("Proposal {number}");
    let mut blocks: Vec<Block> =
        figure(page, &pick.kept, format!("{name}: lowest and highest.")).into_iter().collect();
    let praise =
        Text::default().strong(format!("{number}  ")).words(words::praise(pick, picks, reader.system));
    blocks.push(Block::Text(praise));
    blocks.extend(built(search, &pick.kept, reader.system));
    Block::Group("proposal", blocks)
}

/// How it is built, and the way to it.
fn built(search: &Search, kept: &Kept, system: System) -> Vec<Block> {
    let (Some(choice), Some(design)) = (search.choice(kept), search.design(kept)) else { return Vec::new() };
    vec![Block::note(words::build(&choice, &design, system)), open(&design)]
}

/// A row of figures; those over a wish are told by the target beneath the heading.
fn row(search: &Search, kept: &Kept, name: String, system: System) -> Vec<Cell> {
    let mut cells = vec![Cell::words(name)];
    cells.extend(COLUMNS.into_iter().filter(|measure| matters(search, *measure)).map(|measure| {
        let target = search.targets().of(measure);
        let value = kept.figures.of(measure);
        let text = words::figure(measure, value, system);
        // What reads like the wish is no miss.
        let met = value <= target.value || text == words::figure(measure, target.value, system);
        if target.stance == Stance::Wish && met { Cell::StrongNumber(text) } else { Cell::number(text) }
    }));
    cells
}

fn figures(search: &Search, picks: &[Pick], system: System) -> Block {
    let targets = search.targets();
    let mut head = vec![String::new()];
    head.extend(
        COLUMNS
            .into_iter()
            .filter(|measure| matters(search, *measure))
            .map(|measure| words::heading(measure).into()),
    );
    let rows = picks
        .iter()
        .enumerate()
        .map(|(at, pick)| row(search, &pick.kept, (at + 1).to_string(), system))
        .collect();
    let mut asked = vec![Cell::words("asked")];
    asked.extend(COLUMNS.into_iter().filter(|measure| matters(search, *measure)).map(|measure| {
        let target = targets.of(measure);
        let text = words::figure(measure, target.value, system);
        Cell::number(match target.stance {
            Stance::Limit => format!("≤ {text}"),
            Stance::Wish => format!("({text})"),
            Stance::Free => "–".into(),
        })
    }));
    Block::Table(Table {
        caption: "Greatest figures over the whole lift; wishes in brackets, and bold where they are met"
            .into(),
        head,
        rows,
        foot: vec![asked],
    })
}

fn trade(page: &Page, search: &Search, picks: &[Pick], reader: &Reader) -> Vec<Block> {
    let system = reader.system;
    let kept = search.front().kept();
    let numbered = |one: &Kept| picks.iter().position(|pick| pick.kept.at == one.at).map(|at| at + 1);
    let points: Vec<Point<'_>> = kept
        .iter()
        .map(|one| Point { kept: one, number: numbered(one), picked: Some(one.at) == page.picked })
        .collect();
    let told: Vec<String> = picks
        .iter()
        .enumerate()
        .map(|(at, pick)| {
            let figure = |measure| words::figure(measure, pick.kept.figures.of(measure), system);
            format!("{}: {} with {}", at + 1, figure(Measure::Crank), figure(Measure::Turns))
        })
        .collect();
    let plot = Block::Figure(Figure {
        marks: tradeoff::marks(&points, PICK, system),
        width: tradeoff::SIZE.0,
        height: tradeoff::SIZE.1,
        label: format!("Crank force against turns. {}.", told.join("; ")),
        caption: "Every table that was kept; press a point to look at it.".into(),
        true_scale: false,
    });
    let mut choices: Vec<(String, String)> = kept
        .iter()
        .map(|one| {
            let figure = |measure| words::figure(measure, one.figures.of(measure), system);
            let name = numbered(one).map_or_else(String::new, |number| format!("{number}: "));
            let words = format!(
                "{name}{}, {}, sag {}, sideways {}",
                figure(Measure::Crank),
                figure(Measure::Turns),
                figure(Measure::Sag),
                figure(Measure::Give)
            );
            (one.at.to_string(), words)
        })
        .collect();
    let value = page.looked_at().next().map_or_else(String::new, |one| one.at.to_string());
    if value.is_empty() {
        choices.insert(0, (String::new(), "none".into()));
    }
    let mut beside = vec![Block::Field(Field {
        key: PICK.into(),
        label: "Look at".into(),
        value,
        hint: String::new(),
        fault: String::new(),
        entry: Entry::Chosen(choices),
    })];
    if let Some(one) = page.looked_at().next() {
        beside.extend(figure(page, one, "The table looked at: lowest and highest.".into()));
        let list = COLUMNS
            .into_iter()
            .filter(|measure| matters(search, *measure))
            .map(|measure| {
                let figure = words::figure(measure, one.figures.of(measure), system);
                format!("{} {figure}", words::heading(measure))
            })
            .collect::<Vec<_>>();
        beside.push(Block::text(format!("{}.", capital(&list.join(", ")))));
        beside.extend(built(search, one, system));
    }
    vec![plot, Block::Group("looked-at", beside)]
}

/// Which limits clash, and what would do.
fn nothing(search: &Search, system: System) -> Vec<Block> {
    let ways = search.ways_out();
    let mut blocks = Vec::new();
    if !ways.is_empty() {
        let names: Vec<&str> = ways.iter().map(|way| words::loose(way.loose)).collect();
        let clash = match names.as_slice() {
            [one] => format!("{} alone is in the way.", capital(one)),
            [most @ .., last] => {
                format!("These limits clash: {} and {last}. Any one of these would do:", most.join(", "))
            }
            [] => String::new(),
        };
        blocks.push(Block::text(clash));
        let points = ways.iter().map(|way| {
            let act = Act::Open { words: "Open that table".into(), link: link::encode(&way.design) };
            let figure = |measure| words::figure(measure, way.figures.of(measure), system);
            let words = format!(
                ": then {} at the crank, {}, sag {}, sideways {}. ",
                figure(Measure::Crank),
                figure(Measure::Turns),
                figure(Measure::Sag),
                figure(Measure::Give)
            );
            let told = words::loosened(way, system).text(system);
            vec![Block::Text(Text::default().strong(told).words(words).act(act))]
        });
        blocks.push(Block::Points(points.collect()));
    } else if let Some((design, figures)) = search.nearest() {
        let over: Vec<String> = figures
            .over(search.targets())
            .map(|measure| {
                let figure = words::figure(measure, figures.of(measure), system);
                format!("{} {figure}", words::limit(measure))
            })
            .collect();
        blocks.push(Block::text(format!(
            "No limit alone is to blame. The table that comes nearest passes these together: {}.",
            over.join(", ")
        )));
        blocks.push(open(design));
    } else if search.is_over() {
        blocks.push(Block::text(
            "Even without limits on its figures no table of those looked at holds and stands firm at these heights with this load. \
             See below what they fail by; other stock, thicker bolts or screws, or a longer deck widen what is looked at.",
        ));
    }
    blocks
}

fn ruled_out(search: &Search) -> Option<Block> {
    let mut faults: Vec<_> = search.faults().iter().collect();
    faults.sort_by(|one, other| other.1.cmp(one.1).then(one.0.cmp(other.0)));
    let rows: Vec<Vec<Cell>> = faults
        .into_iter()
        .map(|(fault, count)| {
            vec![Cell::number(count.to_string()), Cell::words(capital(&words::fault(*fault)))]
        })
        .collect();
    (!rows.is_empty()).then(|| {
        Block::Fold(Fold {
            id: "targets-out".into(),
            line: vec![Cell::words("Why the others were left out")],
            blocks: vec![Block::Table(Table {
                caption: "Combinations by what ruled them out first".into(),
                head: vec!["combinations".into(), "why".into()],
                rows,
                foot: Vec::new(),
            })],
            open: false,
        })
    })
}
