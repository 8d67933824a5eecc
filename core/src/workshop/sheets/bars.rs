//! Bars, tubes and battens: what is cut from which length.
use crate::parts::{Form, Part};
use crate::quantity::{Length, System};

/// One bar of the shop with what is cut from it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Bar {
    /// What it is.
    pub form: Form,
    /// Its section: the two smaller sizes of the parts.
    pub section: [Length; 2],
    /// The length it is sold in, or of the longest part where that is longer.
    pub length: Length,
    /// Part number and length of every cut, the longest first.
    pub cuts: Vec<(u32, Length)>,
}

impl Bar {
    /// What is paid for beyond its cuts, kerfs and what is left.
    #[must_use]
    pub fn over(&self) -> Length {
        self.length - self.cuts.iter().map(|(_, length)| *length).sum()
    }

    /// What is left of it after all cuts and kerfs; never below nothing.
    #[must_use]
    pub fn rest(&self, kerf: Length) -> Length {
        let cuts: Length = self.cuts.iter().map(|(_, length)| *length + kerf).sum();
        (self.length - cuts).max(Length::ZERO)
    }
}

/// The length in which a bar is sold over the counter where one measures in these units, mm and inches: by whole feet, bronze as it is cast.
/// Common practice, no source.
fn sold(form: Form, system: System) -> Option<Length> {
    let (mm, inches) = match form {
        Form::FlatBar | Form::RoundBar | Form::SquareTube => (2000.0, 72.0),
        Form::LightBar => (2000.0, 96.0),
        Form::Batten => (2400.0, 96.0),
        Form::BronzeTube => (500.0, 13.0),
        Form::ThreadedBar => (1000.0, 36.0),
        _ => return None,
    };
    Some(match system {
        System::Metric => Length::mm(mm),
        System::Inch => Length::inch(inches),
    })
}

/// All bars of a list of parts, in the lengths of a system of units, each cut into the first bar of its section with room for it, longest parts first: at most a ninth more bars
/// than need be, and one (D. S. Johnson, "Near-optimal bin packing algorithms", 1973: 11/9 of the best, and four).
#[must_use]
pub fn bars(parts: &[Part], kerf: Length, system: System) -> Vec<Bar> {
    let mut cuts: Vec<(&Part, Length)> = parts
        .iter()
        .filter(|part| sold(part.form, system).is_some())
        .flat_map(|part| (0..part.count).map(move |_| (part, length(part))))
        .collect();
    cuts.sort_by_key(|(part, length)| (part.form, section(part), core::cmp::Reverse(*length), part.number));
    let mut bars: Vec<Bar> = Vec::new();
    for (part, length) in cuts {
        let fits = |bar: &&mut Bar| {
            bar.form == part.form && bar.section == section(part) && bar.rest(kerf) >= length
        };
        if let Some(bar) = bars.iter_mut().find(fits) {
            bar.cuts.push((part.number, length));
        } else {
            let whole = sold(part.form, system).unwrap_or(Length::ZERO).max(length);
            bars.push(Bar {
                form: part.form,
                section: section(part),
                length: whole,
                cuts: vec![(part.number, length)],
            });
        }
    }
    bars
}

const fn length(part: &Part) -> Length {
    part.size[0]
}

const fn section(part: &Part) -> [Length; 2] {
    [part.size[1], part.size[2]]
}
