//! The curves of a report as one short number, to see whether two machines, or two versions, compute the same.
use super::{Report, Station};
use crate::quantity::Digest;

/// Digits of each figure that count: all that any result shows, and a good many more than the last that rounding could turn over.
const DIGITS: usize = 9;

impl Report {
    /// Every curve of the report, heights and ratios of all checks among them, in an order that never changes; SI. None of them is missing in a sound report.
    pub fn figures(&self) -> impl Iterator<Item = f64> + '_ {
        let stations = self.stations.iter().flat_map(figures);
        let checks = self.checks.iter().flat_map(|check| {
            let curve = check.curve.iter().flat_map(|(height, ratio)| [*height, *ratio]);
            [check.height, check.ratio].into_iter().chain(curve)
        });
        [self.share, self.turns()].into_iter().chain(stations).chain(checks)
    }

    /// The digest of all [`Self::figures`], each rounded to nine digits, and of the names of the checks.
    #[must_use]
    pub fn digest(&self) -> String {
        let figures = self.figures().fold(Digest::default(), |digest, figure| {
            // Zero has one sign.
            let figure = if figure == 0.0 { 0.0 } else { figure };
            digest.with(format!("{figure:.*e} ", DIGITS - 1).as_bytes())
        });
        self.checks.iter().fold(figures, |digest, check| digest.with(check.id.as_bytes())).text()
    }
}

fn figures(station: &Station) -> Vec<f64> {
    let rest = &station.state.rest;
    let sag = station.sag();
    let mut figures = vec![
        station.height,
        station.pose.carriage_x,
        station.state.screw_length,
        station.state.advantage,
        station.raise(),
        station.still(),
        station.lower(),
        station.crank_raise(),
        station.crank_lower(),
        station.torque.raise,
        station.torque.lower,
        rest.base_wheel,
        rest.top_wheel,
        sag.total(),
        sag.play,
        sag.lash,
    ];
    figures.extend(station.casters());
    figures.extend(rest.joints.iter().flat_map(|force| [force.x, force.y]));
    figures
}
