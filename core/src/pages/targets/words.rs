//! Figures and reasons of the search in words.
use crate::design::Design;
use crate::parts::arm_thickness;
use crate::quantity::{Amount, Phrase, System, capital, figures};
use crate::report::PUSH;
use crate::report::search::{Choice, Fault, Figures, Loose, Measure, Misfit, Pick, WayOut};
use crate::workshop::hardware::money_text;

/// A figure with its unit.
pub(super) fn figure(measure: Measure, value: f64, system: System) -> String {
    match measure {
        Measure::Crank => figures::small_force(value, system).to_string(),
        Measure::Turns => figures::turns(value).to_string(),
        Measure::Sag | Measure::Give => figures::sag(value, system).to_string(),
        Measure::Weight => figures::weight(value, system).to_string(),
        Measure::Area => figures::area(value, system).to_string(),
        Measure::Sheets => format!("{value:.0}"),
        Measure::Cost => money_text(crate::quantity::Money::of(value)),
        Measure::Height | Measure::Deck => figures::size(value, system).to_string(),
    }
}

/// A measure as the heading of a column.
pub(super) const fn heading(measure: Measure) -> &'static str {
    match measure {
        Measure::Crank => "crank",
        Measure::Turns => "turns",
        Measure::Sag => "sag",
        Measure::Give => "sideways",
        Measure::Weight => "weight",
        Measure::Area => "sheet area",
        Measure::Sheets => "sheets",
        Measure::Cost => "cost",
        Measure::Height => "off in height",
        Measure::Deck => "off in deck",
    }
}

/// A limit's name inside a sentence.
pub(super) const fn limit(measure: Measure) -> &'static str {
    match measure {
        Measure::Crank => "the force at the crank",
        Measure::Turns => "the turns",
        Measure::Sag => "the sag",
        Measure::Give => "the give sideways",
        Measure::Weight => "the weight",
        Measure::Area => "the area of sheet",
        Measure::Sheets => "the number of sheets",
        Measure::Cost => "the cost",
        Measure::Height => "the heights",
        Measure::Deck => "the size of the deck",
    }
}

/// What a table that is best at something is; among those where others are as good.
fn best(measure: Measure, figures: &Figures, shared: bool, system: System) -> String {
    let value = figure(measure, figures.of(measure), system);
    let [alone, among] = match measure {
        Measure::Crank => ["easiest to crank", "among the easiest to crank"],
        Measure::Turns => ["fewest turns", "among those with fewest turns"],
        Measure::Sag => ["sags least", "among those that sag least"],
        Measure::Give => ["gives least sideways", "among those that give least sideways"],
        Measure::Weight => ["lightest", "among the lightest"],
        Measure::Area => ["takes least sheet", "among those that take least sheet"],
        Measure::Sheets => ["fewest sheets", "among those with fewest sheets"],
        Measure::Cost => ["cheapest", "among the cheapest"],
        Measure::Height => return "keeps to the heights".into(),
        Measure::Deck => return "keeps to the deck’s size".into(),
    };
    let words = if shared { among } else { alone };
    match measure {
        Measure::Crank => format!("{words}, {value} at most"),
        Measure::Give => format!("{words}, {value} under {}", Amount::Force(PUSH).text(system)),
        _ => format!("{words}, {value}"),
    }
}

/// Whether another proposal is as good in a figure: nobody would choose by the difference, or none is seen.
fn is_shared(pick: &Pick, picks: &[Pick], measure: Measure, system: System) -> bool {
    let steps = |one: &Pick| one.kept.figures.steps()[measure.at()];
    let shown = |one: &Pick| figure(measure, one.kept.figures.of(measure), system);
    let mut others = picks.iter().filter(|other| other.kept.at != pick.kept.at);
    others.any(|other| steps(other) == steps(pick) || shown(other) == shown(pick))
}

/// What it pays with.
fn pays(measure: Measure, figures: &Figures, system: System) -> String {
    let value = figure(measure, figures.of(measure), system);
    match measure {
        Measure::Crank => format!("the crank asks for {value}"),
        Measure::Turns => format!("it takes {value}"),
        Measure::Sag => format!("it sags {value}"),
        Measure::Give => format!("it gives {value} sideways"),
        Measure::Weight => format!("it weighs {value}"),
        Measure::Area => format!("it takes {value} of sheet"),
        Measure::Sheets => format!("it takes {value} sheets"),
        Measure::Cost => format!("it costs {value}"),
        Measure::Height => format!("it misses the heights by {value}"),
        Measure::Deck => format!("its deck is off by {value}"),
    }
}

/// One sentence on what a table is good at, beside the other proposals.
pub(super) fn praise(pick: &Pick, picks: &[Pick], system: System) -> String {
    let figures = &pick.kept.figures;
    let told: Vec<String> = pick
        .best
        .iter()
        .filter(|measure| !matches!(measure, Measure::Height | Measure::Deck))
        .take(2)
        .map(|measure| best(*measure, figures, is_shared(pick, picks, *measure, system), system))
        .collect();
    let start = match (pick.all_round, told.is_empty()) {
        (true, true) => "Good all round".to_owned(),
        (true, false) => format!("Good all round: {}", told.join(" and ")),
        (false, true) => "Between the others".to_owned(),
        (false, false) => capital(&told.join(" and ")),
    };
    match pick.worst.filter(|worst| !pick.best.contains(worst)) {
        Some(worst) => format!("{start}; but {}.", pays(worst, figures, system)),
        None => format!("{start}."),
    }
}

/// How a table is built, in a line.
pub(super) fn build(choice: &Choice, design: &Design, system: System) -> String {
    let size = |metres: f64| figures::size(metres, system);
    let stages = if choice.stages == 1 { "One stage".into() } else { format!("{} stages", choice.stages) };
    format!(
        "{stages}; arms {} long, {} × {}, {}; {} {}; bolts {}.",
        size(design.lift.arm_length.to_m()),
        size(design.arms.width.to_m()).number,
        size(arm_thickness(design).to_m()),
        choice.brace.words(),
        choice.way.words(),
        choice.thread.name,
        figures::size(choice.pin.to_m(), system),
    )
}

/// Why a combination was ruled out.
pub(super) fn fault(fault: Fault) -> String {
    match fault {
        Fault::Misfit(Misfit::Fold) => "frames too deep, or arms that meet, at the lowest deck".into(),
        Fault::Misfit(Misfit::DeckLength) => "arms longer than the deck".into(),
        Fault::Misfit(Misfit::DeckWidth) => "no room for two pairs of arms across".into(),
        Fault::Stuck => "a linkage that cannot move through its lift".into(),
        Fault::Over(measure) => format!("{} over its limit", limit(measure).trim_start_matches("the ")),
        Fault::Check(title) => format!("fails: {title}"),
        Fault::Found => {
            "parts in each other’s way, wheels off their rails, or sag that grows by itself".into()
        }
        Fault::Sway => "a critical load below four times the load".into(),
        Fault::Sheet => "a part larger than a sheet".into(),
    }
}

/// A limit that would have to give, as the beginning of a sentence.
pub(super) fn loosened(way: &WayOut, system: System) -> Phrase {
    let size = |metres: f64| Amount::Size(metres);
    let apart = (way.needed - way.asked).abs();
    match way.loose {
        Loose::Lowest => {
            Phrase::new("A lowest deck ").with(size(apart)).and(" higher, at ").with(size(way.needed))
        }
        Loose::Highest => {
            Phrase::new("A highest deck ").with(size(apart)).and(" lower, at ").with(size(way.needed))
        }
        Loose::DeckLength => Phrase::new("A deck ").with(size(apart)).and(" longer, ").with(size(way.needed)),
        Loose::Most(measure) => Phrase::new(capital(limit(measure)))
            .and(" ")
            .and(figure(measure, way.needed, system))
            .and(" instead of ")
            .and(figure(measure, way.asked, system)),
    }
}

/// The same limit's name.
pub(super) const fn loose(loose: Loose) -> &'static str {
    match loose {
        Loose::Lowest => "the lowest deck",
        Loose::Highest => "the highest deck",
        Loose::DeckLength => "the length of the deck",
        Loose::Most(measure) => limit(measure),
    }
}
