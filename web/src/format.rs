//! The only place where a value becomes text on the page.
use risewright::checks::{Check, ratio_words};
use risewright::design::{Design, Field, Group, screw_words};
use risewright::drawing::Chart;
use risewright::quantity::{Style, System, figures, lower, print};
use risewright::report::{Report, Span, Station};

/// A value of an input for its field: number and unit.
pub fn field_value(field: &Field, steps: i64, units: System) -> (String, &'static str) {
    let printed = print(steps, field.kind, units, Style::Full);
    (printed.number, printed.unit)
}

/// A value that an input would take, with its unit, so that it reads back to the same step.
pub fn nearest(field: &Field, steps: i64, units: System) -> String {
    print(steps, field.kind, units, Style::Full).to_string()
}

/// The range of an input with what ends it, and what the input means.
pub fn hint(field: &Field, span: &Span, units: System) -> String {
    let [from, to] = span.ends.map(|end| end.text(units));
    let mut text = format!("{from} to {to}. {}", field.meaning());
    for why in [&span.below, &span.above].into_iter().flatten() {
        text.push(' ');
        text.push_str(&why.text(units));
    }
    text
}

/// What matters of a group while it is closed.
pub fn summary(group: Group, design: &Design, units: System) -> String {
    let length = |value: risewright::quantity::Length| figures::laid(value, units).number;
    let stress = |value: risewright::quantity::Stress| figures::stress(value.to_pa(), units);
    match group {
        Group::Lift => {
            let stages = design.lift.stages.get();
            let word = if stages == 1 { "stage" } else { "stages" };
            format!("{stages} {word}, {} to {}", length(design.lift.lowest), length(design.lift.highest))
        }
        Group::Arms => format!(
            "{} × {}, {} wide",
            design.arms.layers.get(),
            length(design.arms.thickness),
            length(design.arms.width)
        ),
        Group::Frames => {
            format!("deck {} × {}", length(design.frames.deck_length), length(design.frames.deck_width))
        }
        Group::Drive => format!("screw {}", screw_words(design, units)),
        Group::Running => {
            format!("bolts {}, wheels {}", length(design.running.pin), length(design.running.wheel))
        }
        Group::Sway => {
            let guides =
                if design.sway.guide_base && design.sway.guide_deck { "guided" } else { "not guided" };
            format!("{guides}, holes {}", figures::sag(design.running.clearance.to_m(), units))
        }
        Group::Load => figures::weight(design.load.mass.to_kg(), units).to_string(),
        Group::Strength => {
            format!("wood {}, bolts {}", stress(design.strength.bending), stress(design.strength.bolt_yield))
        }
        Group::Shop => format!("{} × {}", length(design.shop.sheet_length), length(design.shop.sheet_width)),
    }
}

/// What a plot is called where it is chosen.
pub const fn chart(chart: Chart) -> &'static str {
    match chart {
        Chart::ScrewForce => "screw force",
        Chart::Sag => "sag",
        Chart::CrankForce => "crank effort",
        Chart::Wheels => "wheels",
        Chart::Pivots => "pivots",
        Chart::ArmMoment => "arm moment",
        Chart::Tilt => "tilt",
        Chart::Casters => "casters",
        Chart::Sway(_) => "sideways",
    }
}

/// The unit of sizes.
pub const fn length_unit(units: System) -> &'static str {
    match units {
        System::Metric => "mm",
        System::Inch => "in",
    }
}

/// The deck's height with its unit.
pub fn height(metres: f64, units: System) -> String {
    figures::size(metres, units).to_string()
}

/// Where the deck stands, for a slider read aloud.
pub fn deck_words(metres: f64, turns: f64, report: &Report, units: System) -> String {
    format!(
        "deck {}, {} of {} turns",
        height(metres, units),
        figures::turns(turns).number,
        figures::turns(report.turns()).number
    )
}

/// Where the deck came to rest, what the crank feels there, and what is nearest its limit.
pub fn rest_words(station: &Station, report: &Report, units: System) -> String {
    let crank =
        station.torque.crank_raise.map(|newtons| format!(", crank {}", figures::small_force(newtons, units)));
    let worst = report.weakest_at(station.height).map(|(check, ratio)| worst(check, ratio));
    format!(
        "deck {}{}{}",
        height(station.height, units),
        crank.unwrap_or_default(),
        worst.unwrap_or_default()
    )
}

/// What has become of the design after a change: the hardest crank, and what is nearest its limit.
pub fn outcome_words(report: &Report, units: System) -> String {
    let crank = figures::small_force(report.greatest(Station::crank_raise).0, units);
    let worst = report.weakest().map(|check| worst(check, check.ratio)).unwrap_or_default();
    format!("Crank at most {crank}{worst}.")
}

fn worst(check: &Check, ratio: f64) -> String {
    format!(", worst at {} of its limit: {}", ratio_words(ratio), lower(check.title))
}

/// Minutes and seconds of so many turns at a pace, as on a stop-watch.
pub fn stop_watch(turns: f64, turns_a_minute: f64) -> String {
    let seconds = (turns / turns_a_minute * 60.0).round();
    if !seconds.is_finite() {
        return "—".to_owned();
    }
    let minutes = (seconds / 60.0).floor();
    format!("{minutes:.0}:{:02.0}", seconds - 60.0 * minutes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stop_watch_carries_seconds_over() {
        assert_eq!(stop_watch(10.8, 30.0), "0:22");
        assert_eq!(stop_watch(53.2, 30.0), "1:46");
        assert_eq!(stop_watch(59.9, 60.0), "1:00");
        assert_eq!(stop_watch(1.0, 0.0), "—");
    }

    #[test]
    fn closed_groups_say_what_matters() {
        let design = Design::default();
        assert_eq!(summary(Group::Lift, &design, System::Metric), "2 stages, 520 to 1160");
        assert_eq!(summary(Group::Arms, &design, System::Metric), "2 × 18, 75 wide");
        assert_eq!(summary(Group::Drive, &design, System::Inch), "screw Tr 20 x 4");
        let bench = risewright::design::Demo::PottingBench.design();
        assert_eq!(summary(Group::Arms, &bench, System::Inch), "2 × 23/32, 3 wide");
        assert_eq!(summary(Group::Drive, &bench, System::Inch), "screw 3/4-6 Acme");
    }
}
