//! The views of a design, one folder or file each; none knows another, none holds a formula.
pub mod elevation;
pub mod forces;
pub mod lesson;
pub mod reader;
pub mod sway;
