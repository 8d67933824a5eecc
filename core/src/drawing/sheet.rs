//! The whole picture: what stands still, the curves, and what moves with the deck.
use super::chart::Plot;
use super::dimension::{Dimension, OFF_PART, PAST_LINE, extension};
use super::elevation::{LoadShape, Subject, load_shape};
use super::face::Measure;
use super::forces::{Field, ForceScale};
use super::frame::{Area, Frame, Grip};
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Curve, Mark};
use super::outline::{Stroke, tidy, write};
use super::plan::{Needs, Plan, height_number, reach};
use super::plot::{Name, Placed};
use super::pole::tag;
use super::reading::Reading;
use super::scale::{Model, Screen, crisp};
use super::view::{Layout, View};
use super::{crossing, state, title};
use crate::quantity::{Kind, Style, System, figures, print};
use crate::report::{Curve as Figured, Report, Station};
use glam::DVec2;

/// A picture of a table at one height.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// What changes with design, size and the reader's choices only, far to near. It lies beneath the rest.
    pub still: Vec<Mark>,
    /// The curves of the plots.
    pub curves: Vec<Curve>,
    /// What moves with the deck, far to near. It lies on top.
    pub moving: Vec<Mark>,
    /// Where things lie.
    pub frame: Frame,
    /// What can be taken hold of, and the values at this height.
    pub live: Live,
}

/// What goes with the moving marks of one height.
#[derive(Clone, Debug, PartialEq)]
pub struct Live {
    /// The ring at the base wheel axle; none on paper.
    pub carriage: Option<Grip>,
    /// The grip at the deck; none on paper.
    pub deck: Option<Grip>,
    /// Where the level line lies in the drawing, px.
    pub level: f64,
    /// The values at this height.
    pub reading: Reading,
}

/// The picture of a report with the deck at `height`, m (brought back into the lift).
///
/// The same as [`Sheet::new`] and [`Sheet::moving`] one after the other, for pictures that are made once.
#[must_use]
pub fn compose(report: &Report, height: f64, view: &View, measure: Measure<'_>) -> Picture {
    let sheet = Sheet::new(report, view, measure);
    let (moving, live) = sheet.moving(report, &report.at(height), measure);
    Picture {
        width: sheet.width,
        height: sheet.height,
        still: sheet.still,
        curves: sheet.curves,
        moving,
        frame: sheet.frame,
        live,
    }
}

/// A picture without its moving part: made anew when design, size, units or the reader's choices change, asked for the
/// moving part whenever the deck moves.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// What stands still, far to near.
    pub still: Vec<Mark>,
    /// The curves of the plots.
    pub curves: Vec<Curve>,
    /// Where things lie.
    pub frame: Frame,
    view: View,
    plan: Plan,
    plots: Vec<Plot>,
    names: Vec<Name>,
    taken: Vec<Area>,
    forces: ForceScale,
    runs: [[f64; 2]; 2],
}
