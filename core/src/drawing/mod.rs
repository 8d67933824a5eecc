//! How the table looks on paper: a complete picture as data, for page, print and file.
//!
//! Two layers. `elevation` draws the table itself in millimetres, every outline with its line type (ISO 128) and in
//! painter's order. Around it this room lays out the picture in pixels: the elevation, the pole with its bands, which is the only
//! height axis, plots at the same scale and level, dimensions (ISO 129-1), forces to one scale, state marks, title block
//! and table of values, every text with a box that meets no other.
//!
//! [`Sheet::new`] draws what changes only with design, size and the reader's choices; [`Sheet::moving`] what moves with the deck;
//! [`compose`] does both. A page patches marks in place and draws the curves on a canvas beneath; [`Picture::svg`]
//! writes the same as a file.

mod alone;
mod arrow;
pub mod boring;
pub mod bought;
pub mod building;
mod chart;
mod charts;
mod crossing;
pub mod cutting;
mod dimension;
pub mod elevation;
pub mod end;
mod face;
mod forces;
mod frame;
pub mod freed;
mod ghost;
mod hit;
pub mod joint_test;
mod lettering;
mod mark;
mod marked;
mod moving;
mod outline;
mod overlay;
mod paper;
mod plain;
mod plan;
mod plot;
mod plotted;
mod pole;
pub mod poster;
mod probe;
mod reading;
mod scale;
mod sheet;
mod slim;
mod state;
mod svg;
mod ticks;
mod title;
mod usage;
mod view;

pub(crate) use chart::joint_words;
pub use face::{Face, Measure, widths};
pub use frame::{Area, Frame, Grip, PlotArea};
pub use ghost::over_each_other;
pub use mark::{Anchor, Curve, Hue, Ink, Mark, Shape};
pub(crate) use outline::write;
pub(crate) use svg::escaped;

pub use outline::{Bounds, Outline, Segment, Stroke};
pub use plain::LIGHT;
pub use plotted::{Column, PlotRow, PlotTable, Plotted};
pub use reading::{Reading, ReadingRow};
pub use scale::{Model, Scale, Screen};
pub use sheet::{Live, Picture, Sheet, compose, compose_over};
pub use slim::{Placed, placed, small};
pub use ticks::Ticks;
pub use usage::{Beside, Small, axis, bar, bar_scale, sign, spark};
pub use view::{Chart, Layout, OnPaper, Show, SwayChart, View};

/// The classes of the drawing language as a style sheet. It uses the names of the tokens, which stand elsewhere.
pub const LANGUAGE: &str = include_str!("language.css");

#[cfg(test)]
mod tests;
