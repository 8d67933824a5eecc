//! The plots of the slow report: a band from soft to stiff with the best guess drawn, the same upright axis as ever.
use crate::drawing::chart::{Limit, Look, PLAY, Plot, Quantity, SAG, Series, Unit, line};
use crate::drawing::mark::{Hue, Ink};
use crate::drawing::plot::TINT;
use crate::drawing::view::{Chart, SwayChart};
use crate::mechanics::Rattle;
use crate::mechanics::frame3::Stiffness3;
use crate::quantity::{System, figures};
use crate::report::{COUPLE, Case, LEAST_MULTIPLE, PUSH, Report, SwayReport, told};

const GIVE_EDGE: Look = (line("c-give", Hue::Sag, 1.1, &[]), "sag-t halo", ("d-give", 3.0));
const GIVE_LOOSE: Look = (line("c-loose", Hue::Sag, 1.1, &[6.0, 2.5]), "sag-t halo", ("d-give", 3.0));
const INK: Look = (line("c-ink", Hue::Ink, 2.2, &[]), "b halo", ("d-ink", 4.0));
const INK_EDGE: Look = (line("c-ink-2", Hue::Ink, 1.1, &[]), "halo", ("d-ink-2", 3.0));
const INK_LOOSE: Look = (line("c-ink-3", Hue::Ink, 1.1, &[6.0, 2.5]), "halo", ("d-ink-2", 3.0));
const PLAY_EDGE: Look = (line("c-play", Hue::Play, 1.6, &[]), "play-t halo", ("d-play", 3.0));

const GIVE_BAND: Ink = Ink { class: "b-give", hue: Hue::Sag, width: 0.0, dash: &[], opacity: 0.16 };
const INK_BAND: Ink = Ink { class: "b-ink", hue: Hue::Ink, width: 0.0, dash: &[], opacity: 0.09 };

/// How the curves of the four cases are drawn.
struct Looks {
    main: Look,
    edge: Look,
    loose: Look,
}

/// The plot of a chart; without curves as long as the slow report is not there.
pub(super) fn plot(chart: SwayChart, report: &Report, sway: Option<&SwayReport>, system: System) -> Plot {
    let empty = SwayReport::default();
    let sway = sway.unwrap_or(&empty);
    let give = Looks { main: SAG, edge: GIVE_EDGE, loose: GIVE_LOOSE };
    let ink = Looks { main: INK, edge: INK_EDGE, loose: INK_LOOSE };
    let (title, meaning, unit, series, tint) = match chart {
        SwayChart::Give => (
            "Gives sideways",
            format!("under {} at the deck", figures::small_force(PUSH, system)),
            Unit::Give,
            cases(sway, &give, |stiffness| Some(told::gives(stiffness))),
            GIVE_BAND,
        ),
        SwayChart::Multiple => (
            "Critical load",
            "as a multiple of the load".to_owned(),
            Unit::Times,
            cases(sway, &ink, |stiffness| stiffness.lambda),
            INK_BAND,
        ),
        SwayChart::Rattle => (
            "Rattles by",
            "to either side".to_owned(),
            Unit::Give,
            vec![
                bound(sway, "at most", PLAY, |rattle| rattle.most),
                bound(sway, "at least", PLAY_EDGE, |rattle| rattle.least),
            ],
            TINT,
        ),
        SwayChart::Twist => (
            "Twists",
            format!("under {}", figures::torque(COUPLE, system)),
            Unit::Twist,
            cases(sway, &give, |stiffness| Some(told::twists(stiffness))),
            GIVE_BAND,
        ),
    };
    let band = if chart == SwayChart::Rattle { [0, 1] } else { [1, 2] };
    let note = match unit {
        Unit::Times => meaning,
        _ => format!("{}, {meaning}", unit.symbol(system)),
    };
    let limit = (chart == SwayChart::Multiple).then(|| Limit {
        least: true,
        ..Limit::even(format!("{LEAST_MULTIPLE:.0}×"), LEAST_MULTIPLE, report)
    });
    Plot {
        chart: Chart::Sway(chart),
        title,
        note,
        per_si: unit.per_si(system),
        tint: series.get(band[1]).map(|_| (band, tint)),
        series,
        other: Vec::new(),
        limit,
        unit,
    }
}

/// The best guess, the soft and the stiff end, and what is left inside the play of the guides; those not known are left out,
/// but the band only as a whole.
fn cases(sway: &SwayReport, looks: &Looks, figure: impl Fn(&Stiffness3) -> Option<f64>) -> Vec<Series> {
    let rows = [
        (Case::Middle, "middle", looks.main),
        (Case::Soft, "soft", looks.edge),
        (Case::Stiff, "stiff", looks.edge),
        (Case::Unguided, "unguided", looks.loose),
    ];
    let banded = !sway.soft.is_empty() && !sway.stiff.is_empty();
    rows.into_iter()
        .filter(|(case, ..)| match case {
            Case::Soft | Case::Stiff => banded,
            _ => !sway.case(*case).is_empty(),
        })
        .map(|(case, name, look)| {
            let values = sway.case(case).iter().zip(&sway.heights);
            series(name, look, values.filter_map(|(stiffness, height)| Some((figure(stiffness)?, *height))))
        })
        .collect()
}

fn bound(sway: &SwayReport, name: &str, look: Look, figure: fn(&Rattle) -> f64) -> Series {
    series(
        name,
        look,
        sway.rattle.iter().zip(&sway.heights).map(|(rattle, height)| (figure(rattle), *height)),
    )
}

fn series(name: &str, (ink, lettering, dot): Look, points: impl Iterator<Item = (f64, f64)>) -> Series {
    Series {
        name: name.to_owned(),
        quantity: Quantity::Drawn,
        ink,
        lettering,
        dot,
        points: points.filter(|(value, height)| value.is_finite() && height.is_finite()).collect(),
    }
}
