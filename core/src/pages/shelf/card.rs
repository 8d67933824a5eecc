//! What is shown of a design on the shelf: the table low and high, and the figures by which one knows it again.
use crate::drawing::{Small, small};
use crate::pages::document::{Block, Figure};
use crate::quantity::{System, figures};
use crate::report::Report;

/// Room for the two drawings, px.
const ROOM: (f64, f64) = (300.0, 150.0);

/// A design in small.
pub(super) struct Card {
    drawing: Small,
    /// Lowest and highest deck, m.
    lift: [f64; 2],
    /// The load, kg.
    load: f64,
    /// The greatest force at the crank, N; none where the screw has none to tell.
    crank: Option<f64>,
}

impl Card {
    pub fn of(report: &Report) -> Self {
        let lift = [report.lowest(), report.highest()];
        let (crank, _) = report.greatest(|station| station.torque.crank_raise.unwrap_or(f64::NAN));
        Self {
            drawing: small(report, &lift, ROOM),
            lift,
            load: report.design.load.mass.to_kg(),
            crank: crank.is_finite().then_some(crank),
        }
    }

    /// The drawing with its figures beneath.
    pub fn figure(&self, name: &str, system: System) -> Block {
        let [low, high] = self.lift.map(|height| figures::size(height, system).to_string());
        let mut words = format!("{low} to {high}, load {}", figures::weight(self.load, system));
        if let Some(crank) = self.crank {
            words += &format!(", crank {} at most", figures::small_force(crank, system));
        }
        Block::Figure(Figure {
            marks: self.drawing.marks.clone(),
            width: self.drawing.width,
            height: self.drawing.height,
            label: format!("{name}, lowest and highest."),
            caption: words.into(),
            true_scale: false,
        })
    }
}
