//! The figures one wants on the wall: what hand, screw and wheels feel at both ends of the lift.
use crate::checks::Verdict;
use crate::drawing::chart;
use crate::drawing::moving::load_words;
use crate::quantity::figures::{self, Figure};
use crate::quantity::{Amount, Phrase, System};
use crate::report::{Report, Station};

/// A line of the table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyRow {
    /// What it is.
    pub name: String,
    /// At the lowest deck.
    pub lowest: String,
    /// At the highest deck.
    pub highest: String,
    /// Their unit.
    pub unit: &'static str,
}

/// The table with what stands beneath it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyFigures {
    /// Load for which they hold.
    pub load: String,
    /// The lines.
    pub rows: Vec<KeyRow>,
    /// Turns, time, whether the screw holds, and what a minus sign means.
    pub note: String,
}

impl KeyFigures {
    /// Of a report, in the reader's units.
    #[must_use]
    pub fn of(report: &Report, system: System) -> Self {
        let ends = [report.at(report.lowest()), report.at(report.highest())];
        let row = |name: String, figure: &dyn Fn(&Station) -> Figure| {
            let [lowest, highest] = [figure(&ends[0]), figure(&ends[1])];
            KeyRow { name, lowest: lowest.number, highest: highest.number, unit: highest.unit }
        };
        let hand = |newtons: f64| figures::small_force(newtons, system);
        let runs_down = ends.iter().any(|station| station.crank_lower() < 0.0);
        let lowering = if runs_down { "Crank, held back" } else { "Crank, lowering" };
        let lead = report.design.drive.lead.to_m();
        let mut rows = vec![
            row("Screw, raising".into(), &|at| figures::large_force(at.raise(), system)),
            row("Crank, raising".into(), &|at| hand(at.crank_raise())),
            row(lowering.into(), &|at| hand(at.crank_lower().abs())),
            row("Deck for a turn".into(), &|at| figures::sag(at.rise_a_turn(lead), system)),
            row("Sag under load".into(), &|at| figures::sag(at.sag().total(), system)),
            row("Play adds".into(), &|at| figures::sag(at.sag().play, system)),
        ];
        if let Some((name, pivot, _)) = chart::pivots(report).into_iter().next() {
            rows.push(row(format!("Worst pivot, {name}"), &|at| figures::large_force(pivot.of(at), system)));
        }
        rows.extend([
            row("Base wheels".into(), &|at| hand(at.state.rest.base_wheel)),
            row("Deck wheels".into(), &|at| hand(at.state.rest.top_wheel)),
            row("Left casters".into(), &|at| hand(at.casters()[0])),
            row("Right casters".into(), &|at| hand(at.casters()[1])),
        ]);
        let pulls = rows.iter().any(|row| row.lowest.starts_with('−') || row.highest.starts_with('−'));
        Self {
            load: format!("with {}", load_words(report, system)),
            rows,
            note: note(report, pulls).text(system),
        }
    }
}

fn note(report: &Report, pulls: bool) -> Phrase {
    let pace = report.design.drive.pace.to_per_minute();
    let mut phrase = Phrase::new("")
        .with(Amount::Turns(report.turns()))
        .and(" from lowest to highest, ")
        .with(Amount::Duration(report.turns() / pace * 60.0))
        .and(format!(" at {} a minute. Forces", figures::turns(pace).number.trim_end_matches(".0")))
        .and(" are for both sides together.");
    phrase = match report.check("screw-holding").map(|check| check.verdict) {
        Some(Verdict::Over) => phrase.and(" The screw does not hold by itself: hold the crank."),
        Some(Verdict::Watch) => phrase.and(" The screw holds by itself, but may creep when shaken."),
        _ => phrase.and(" The screw holds by itself."),
    };
    if pulls { phrase.and(" A minus sign pulls upwards.") } else { phrase }
}
