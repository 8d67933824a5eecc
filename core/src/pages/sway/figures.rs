//! Every figure with its band, its middle and, when opened, what it means and what it hangs on.
use super::Sway;
use crate::mechanics::frame3::Stiffness3;
use crate::pages::Reader;
use crate::pages::document::{Block, Cell, Fold, Table, Text};
use crate::quantity::figures::Figure;
use crate::quantity::{Amount, System, figures};
use crate::report::{CORNER, COUPLE, Case, PUSH, SwayReport, told};

/// The springs that matter most, as many as are named.
const NAMED: usize = 3;
/// A stiffness that changes a figure by less than this share is not named.
const MATTERS: f64 = 0.02;

/// A figure that has a band.
pub(super) struct Banded {
    id: &'static str,
    title: &'static str,
    /// What it is told by.
    under: fn(System) -> String,
    /// The figure, SI; the larger the worse unless `falls`.
    pub(super) value: fn(&Stiffness3) -> Option<f64>,
    /// As it is written.
    pub(super) write: fn(f64, System) -> Figure,
    /// Whether a smaller figure is worse.
    falls: bool,
    meaning: &'static str,
}

pub(super) const GIVE: Banded = Banded {
    id: "sway-give",
    title: "Gives sideways",
    under: |system| format!("under {}", figures::small_force(PUSH, system)),
    value: |at| Some(told::gives(at)),
    write: figures::sag,
    falls: false,
    meaning: "How far the deck moves across when someone leans on its edge. Arms bend the thin way, bolts rock in their holes, boards turn in their housings, guides press on their rails. Free play comes on top.",
};
pub(super) const LOADED: Banded = Banded {
    id: "sway-loaded",
    title: "The same with its load on",
    under: |system| format!("under {}", figures::small_force(PUSH, system)),
    value: told::gives_loaded,
    write: figures::sag,
    falls: false,
    meaning: "The load leans over with the deck and pushes on: the stiffness that is left is the frame's less what the weight takes away (second order). Where it is much more than without a load, the table is near its critical load; where less than twice the load is critical no figure is given.",
};
pub(super) const TWIST: Banded = Banded {
    id: "sway-twist",
    title: "Twists",
    under: |system| format!("under {}", figures::torque(COUPLE, system)),
    value: |at| Some(told::twists(at)),
    write: |radians, _| figures::twist(radians),
    falls: false,
    meaning: "How far the deck turns about the upright, as when one end is pushed and the other held. One mrad is a millimetre in a metre.",
};
pub(super) const ROLL: Banded = Banded {
    id: "sway-roll",
    title: "Rolls",
    under: |system| format!("under {}", figures::torque(COUPLE, system)),
    value: |at| Some(told::rolls(at)),
    write: |radians, _| figures::twist(radians),
    falls: false,
    meaning: "How far the deck turns about the lengthwise axis, one side up, the other down, as under a load that stands to one side.",
};
pub(super) const LENGTHWISE: Banded = Banded {
    id: "sway-lengthwise",
    title: "Gives lengthwise",
    under: |system| format!("under {}", figures::small_force(PUSH, system)),
    value: |at| Some(told::gives_lengthwise(at)),
    write: figures::sag,
    falls: false,
    meaning: "How far the deck moves along the table. Here the screw, its bearing and the cross-bar hold; play in the nut comes on top.",
};
pub(super) const CORNER_DROP: Banded = Banded {
    id: "sway-corner",
    title: "A corner drops",
    under: |system| format!("under {}", figures::small_force(CORNER, system)),
    value: |at| Some(told::corner_drops(at)),
    write: figures::sag,
    falls: false,
    meaning: "How far the farther corner of the deck goes down when someone leans on it: sag, roll and twist together. Both sides of the table are alike, so either corner of that end drops as far.",
};
pub(super) const MULTIPLE: Banded = Banded {
    id: "sway-critical",
    title: "Critical load",
    under: |_| "times the load".into(),
    value: |at| at.lambda,
    write: |multiple, _| figures::factor(multiple),
    falls: true,
    meaning: "The smallest multiple of the weight on the table at which the frame no longer stands up by itself but leans over: where what the weight takes away equals what the frame has. The height of the load's weight above the deck counts.",
};

const ALL: [&Banded; 7] = [&GIVE, &LOADED, &MULTIPLE, &CORNER_DROP, &TWIST, &ROLL, &LENGTHWISE];

impl Banded {
    /// The station at which its best guess is worst.
    pub(super) fn worst(&self, sway: &SwayReport) -> Option<usize> {
        let values = sway.middle.iter().enumerate().filter_map(|(at, row)| Some((at, (self.value)(row)?)));
        let sign = if self.falls { -1.0 } else { 1.0 };
        values.max_by(|one, other| (sign * one.1).total_cmp(&(sign * other.1))).map(|(at, _)| at)
    }

    fn at(&self, sway: &SwayReport, case: Case, station: usize) -> Option<f64> {
        sway.case(case).get(station).and_then(self.value)
    }

    /// Its band at a station, the smaller end first; one figure where both ends are alike or not known.
    fn band(&self, sway: &SwayReport, station: usize, system: System) -> String {
        let ends = [Case::Stiff, Case::Soft].map(|case| self.at(sway, case, station));
        let [mut from, mut to] = ends;
        if self.falls {
            (from, to) = (to, from);
        }
        match (from, to) {
            (Some(from), Some(to)) => {
                let (from, to) = ((self.write)(from, system), (self.write)(to, system));
                if from.number == to.number { to.to_string() } else { format!("{} to {to}", from.number) }
            }
            (Some(from), None) => format!("from {}", (self.write)(from, system)),
            (None, Some(to)) => format!("up to {}", (self.write)(to, system)),
            (None, None) => self
                .at(sway, Case::Middle, station)
                .map_or_else(String::new, |middle| (self.write)(middle, system).to_string()),
        }
    }

    fn fold(&self, page: &Sway, sway: &SwayReport, system: System) -> Option<Block> {
        let Some(station) = self.worst(sway) else {
            // A table without a weight has no critical load; one that is too near it has no figure with its load on.
            return (self.id == LOADED.id).then(|| {
                let near = "too near its critical load".to_owned();
                plain(self.id, line(self.title, "—".into(), String::new(), near), [self.meaning, ""], None)
            });
        };
        let height = figures::size(*sway.heights.get(station)?, system);
        let middle = (self.write)(self.at(sway, Case::Middle, station)?, system);
        let mut blocks = vec![Block::text(self.meaning), Block::Table(self.table(sway, system))];
        blocks.extend(self.unguided(sway, station, system).map(Block::text));
        blocks.extend(page.hangs_on(self, station, system).map(Block::text));
        Some(Block::Fold(Fold {
            id: self.id.into(),
            line: line(
                self.title,
                self.band(sway, station, system),
                format!("best guess {middle}"),
                format!("{}, at {height}", (self.under)(system)),
            ),
            blocks,
            open: false,
        }))
    }

    /// Lowest, middle and highest deck, from stiff to soft.
    fn table(&self, sway: &SwayReport, system: System) -> Table {
        let last = sway.heights.len().saturating_sub(1);
        let cases = [
            ("stiff joints", Case::Stiff),
            ("best guess", Case::Middle),
            ("soft joints", Case::Soft),
            ("guides in their play", Case::Unguided),
        ];
        let known: Vec<_> = cases.into_iter().filter(|(_, case)| !sway.case(*case).is_empty()).collect();
        let rows = [0, last / 2, last].into_iter().filter_map(|station| {
            let height = figures::size(*sway.heights.get(station)?, system);
            let cells = known.iter().map(|(_, case)| {
                let value = self.at(sway, *case, station).unwrap_or(f64::NAN);
                let number = (self.write)(value, system).number;
                if *case == Case::Middle { Cell::StrongNumber(number) } else { Cell::number(number) }
            });
            Some(core::iter::once(Cell::number(height.to_string())).chain(cells).collect())
        });
        let unit = (self.write)(0.0, system).unit;
        Table {
            caption: format!(
                "{}, {} {}",
                self.title,
                if unit.is_empty() { "" } else { unit },
                (self.under)(system)
            )
            .replace(",  ", ", "),
            head: core::iter::once("deck")
                .chain(known.iter().map(|(name, _)| *name))
                .map(String::from)
                .collect(),
            rows: rows.collect(),
            foot: Vec::new(),
        }
    }

    /// What is left with the wheels inside the play of their guides.
    fn unguided(&self, sway: &SwayReport, station: usize, system: System) -> Option<String> {
        let (loose, middle) =
            (self.at(sway, Case::Unguided, station)?, self.at(sway, Case::Middle, station)?);
        ((loose / middle - 1.0).abs() > MATTERS).then(|| {
            format!(
                "Until the side guides touch their rails they hold nothing: it is {} as long as the wheels stand within the guides' play.",
                (self.write)(loose, system)
            )
        })
    }
}

/// The stations at which some figure is worst, from the lowest deck up.
pub(super) fn worst_stations(sway: &SwayReport) -> Vec<usize> {
    let mut list: Vec<usize> = ALL.iter().filter_map(|figure| figure.worst(sway)).collect();
    list.sort_unstable();
    list.dedup();
    list
}

/// A line of the list of figures.
fn line(title: &str, band: String, middle: String, under: String) -> Vec<Cell> {
    vec![
        Cell::Words(Text::default().strong(title)),
        Cell::StrongNumber(band),
        Cell::number(middle),
        Cell::words(under),
    ]
}

fn plain(id: &str, line: Vec<Cell>, words: [&str; 2], table: Option<Table>) -> Block {
    let mut blocks: Vec<Block> =
        words.into_iter().filter(|words| !words.is_empty()).map(Block::text).collect();
    blocks.splice(1..1, table.map(Block::Table));
    Block::Fold(Fold { id: id.into(), line, blocks, open: false })
}

/// A table at the lowest, the middle and the highest deck.
fn at_three(
    sway: &SwayReport,
    caption: String,
    heads: &[&str],
    cells: impl Fn(usize) -> Option<Vec<Figure>>,
    system: System,
) -> Table {
    let last = sway.heights.len().saturating_sub(1);
    let rows = [0, last / 2, last].into_iter().filter_map(|station| {
        let height = Cell::number(figures::size(*sway.heights.get(station)?, system).to_string());
        let cells = cells(station)?.into_iter().map(|figure| Cell::number(figure.number));
        Some(core::iter::once(height).chain(cells).collect())
    });
    Table {
        caption,
        head: core::iter::once(&"deck").chain(heads).map(|head| (*head).to_owned()).collect(),
        rows: rows.collect(),
        foot: Vec::new(),
    }
}

impl Sway {
    /// Every figure at its worst height.
    pub(super) fn figures(&self, reader: &Reader) -> Vec<Block> {
        let Some(sway) = &self.known else { return Vec::new() };
        let system = reader.system;
        let mut list: Vec<Block> = ALL.iter().filter_map(|figure| figure.fold(self, sway, system)).collect();
        list.splice(2..2, rattles(sway, system));
        list.extend(lifts(sway, system));
        list.extend(self.folds_flat(system));
        vec![
            Block::heading("Figure by figure, each where it is worst"),
            Block::note(
                "From the stiffest to the softest joints to be expected. Open a line for what it means, what the band hangs on, and other heights.",
            ),
            Block::Group("sway-figures", list),
        ]
    }

    /// Which assumed stiffnesses a figure hangs on where it is worst, once that was looked for.
    fn hangs_on(&self, figure: &Banded, station: usize, system: System) -> Option<String> {
        let effects = self.springs.as_ref().filter(|run| run.progress().finished())?.effects();
        let place = self.looked.iter().position(|looked| *looked == station)?;
        let mut list: Vec<(f64, String)> = effects
            .into_iter()
            .filter_map(|effect| {
                let [soft, stiff] =
                    [(figure.value)(effect.soft.get(place)?)?, (figure.value)(effect.stiff.get(place)?)?];
                let ratio = (soft / stiff).max(stiff / soft);
                let [from, to] =
                    [soft.min(stiff), soft.max(stiff)].map(|value| (figure.write)(value, system));
                (ratio > 1.0 + MATTERS)
                    .then(|| (ratio, format!("{} ({} to {to})", effect.spring.title, from.number)))
            })
            .collect();
        list.sort_by(|one, other| other.0.total_cmp(&one.0));
        list.truncate(NAMED);
        let names: Vec<String> = list.into_iter().map(|(_, words)| words).collect();
        Some(if names.is_empty() {
            "No single one of the assumed stiffnesses changes it by more than a fiftieth.".into()
        } else {
            format!(
                "What the band hangs on most, each varied alone while the others keep their best guess: {}. How each is reckoned stands further down.",
                names.join("; ")
            )
        })
    }

    /// How near the low table is to folding flat.
    fn folds_flat(&self, system: System) -> Option<Block> {
        let (_, height) = self.report.greatest(|station| -station.folds_flat());
        let station = self.report.at(height);
        let multiple = station.folds_flat();
        let words = |amount: Amount| amount.text(system);
        multiple.is_finite().then(|| {
            plain(
                "sway-flat",
                line(
                    "Folds flat when loaded",
                    words(Amount::Factor(multiple)),
                    String::new(),
                    format!("times the load, at {}", words(Amount::Size(height))),
                ),
                [
                    "A low table sinks as screw, cross-bar and pivots give, which lays the arms flatter, which makes the screw's force grow: past a point it goes all the way down. This is the load at which a table that is loaded at this height reaches that point.",
                    &format!(
                        "Under its load the table sags {} here, {} of its lift. The limit is 0.19 of k L sin³θ/n at the unloaded angle, with all sag taken as give along the screw: on the safe side. Shallow-arch snap-through, in any text on elastic stability; the factor is worked out here.",
                        words(Amount::Give(station.sag().total())),
                        words(Amount::Share(station.sag_share())),
                    ),
                ],
                None,
            )
        })
    }
}

/// Free play at its worst height.
fn rattles(sway: &SwayReport, system: System) -> Option<Block> {
    let (rattle, height) =
        sway.rattle.iter().zip(&sway.heights).max_by(|one, other| one.0.most.total_cmp(&other.0.most))?;
    let words = |amount: Amount| amount.text(system);
    Some(plain(
        "sway-rattle",
        line(
            "Rattles by",
            words(Amount::GiveRange(rattle.least, rattle.most)),
            String::new(),
            format!("to either side, at {}", words(Amount::Size(*height))),
        ),
        [
            "How far the deck can be shaken before anything bends: bolts shift and tilt in their holes, wheels move between their guides.",
            "The two figures bound it. The smaller is a movement that keeps to every clearance at once; the larger is what no set of joint forces in balance lets it pass (the two theorems of limit analysis). They follow from the clearances entered and from how far the pivots are worn, not from any assumed stiffness.",
        ],
        Some(at_three(
            sway,
            format!("Rattles by, {} to either side", figures::sag(0.0, system).unit),
            &["at least", "at most"],
            |station| {
                let rattle = sway.rattle.get(station)?;
                Some([rattle.least, rattle.most].map(|metres| figures::sag(metres, system)).into())
            },
            system,
        )),
    ))
}

/// The push that lifts a wheel, at the height where it is least.
fn lifts(sway: &SwayReport, system: System) -> Option<Block> {
    use crate::mechanics::frame3::Rail;
    let known =
        sway.wheel_lift.iter().zip(&sway.heights).filter_map(|(lift, height)| Some(((*lift)?, *height)));
    let (lift, height) = known.min_by(|one, other| one.0.push.total_cmp(&other.0.push))?;
    let wheel = match lift.rail {
        Rail::Base => "a base wheel",
        Rail::Top => "a deck wheel",
    };
    let words = |amount: Amount| amount.text(system);
    Some(plain(
        "sway-lift",
        line(
            "A sideways push lifts a wheel",
            format!("from {}", words(Amount::Force(lift.push))),
            String::new(),
            format!("{wheel}, at {}", words(Amount::Size(height))),
        ),
        [
            "The push at the deck that takes all load from the wheel on its side. Beyond it only the keeper over the wheel holds it down; without one it leaves its rail.",
            "The table as a whole tips at another push, over its casters: that stands under Strength.",
        ],
        Some(at_three(
            sway,
            format!("Push that lifts a wheel, {}", figures::small_force(0.0, system).unit),
            &["push"],
            |station| Some(vec![figures::small_force(sway.wheel_lift.get(station).copied()??.push, system)]),
            system,
        )),
    ))
}
