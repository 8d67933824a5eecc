//! How much of each thickness of sheet the parts take, by their area.
use super::part::{Form, Part};
use crate::order::order;
use crate::quantity::Length;

/// Area of sheet that all pieces of a thickness take, every layer counted, without kerf, m2; the thickest first.
#[must_use]
pub fn sheet_areas(list: &[Part]) -> Vec<(Length, f64)> {
    let mut areas: Vec<(Length, f64)> = Vec::new();
    for part in list.iter().filter(|part| part.form == Form::Sheet) {
        let (thickness, area) = (part.layer(), part.sheet_area());
        match areas.iter_mut().find(|of| of.0 == thickness) {
            Some(of) => of.1 += area,
            None => areas.push((thickness, area)),
        }
    }
    order(&mut areas, |one, other| other.0.cmp(&one.0));
    areas
}
