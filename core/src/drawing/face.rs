//! How wide lettering is, before anybody has drawn it.

/// The kinds of lettering on a drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Face {
    /// Dimensions, values and names of curves: 11.5 px.
    Plain,
    /// The same in bold.
    Bold,
    /// Notes: 11 px.
    Note,
    /// Headings: 12.5 px bold.
    Head,
    /// Numbers in state marks: 10.5 px bold.
    Number,
}

impl Face {
    /// Every face.
    pub const ALL: [Self; 5] = [Self::Plain, Self::Bold, Self::Note, Self::Head, Self::Number];

    /// Height of the lettering as CSS counts it, px.
    #[must_use]
    pub const fn size(self) -> f64 {
        match self {
            Self::Plain | Self::Bold => 11.5,
            Self::Note => 11.0,
            Self::Head => 12.5,
            Self::Number => 10.5,
        }
    }

    /// CSS font weight.
    #[must_use]
    pub const fn weight(self) -> u16 {
        match self {
            Self::Plain | Self::Note => 400,
            Self::Bold | Self::Head => 600,
            Self::Number => 700,
        }
    }
}

/// Measures a text in a face, px wide.
pub type Measure<'a> = &'a dyn Fn(&str, Face) -> f64;

/// Advance widths of the printable ASCII signs from the space on, in thousandths of the size (DejaVu Sans Condensed
/// 2.37, horizontal metrics of the font).
const REGULAR: [u16; 95] = [
    286, 360, 414, 754, 572, 855, 702, 247, 351, 351, 450, 754, 286, 325, 286, 303, 572, 572, 572, 572, 572,
    572, 572, 572, 572, 572, 303, 303, 754, 754, 754, 478, 900, 615, 617, 628, 693, 568, 518, 697, 677, 265,
    265, 590, 501, 776, 673, 708, 542, 708, 625, 571, 549, 659, 615, 890, 616, 549, 616, 351, 303, 351, 754,
    450, 450, 551, 571, 495, 571, 554, 316, 571, 570, 250, 250, 521, 250, 876, 570, 550, 571, 571, 370, 469,
    353, 570, 532, 736, 532, 532, 472, 572, 303, 572, 754,
];
const BOLD: [u16; 95] = [
    313, 410, 469, 754, 626, 901, 785, 275, 411, 411, 470, 754, 342, 374, 342, 329, 626, 626, 626, 626, 626,
    626, 626, 626, 626, 626, 360, 360, 754, 754, 754, 522, 900, 696, 686, 660, 747, 615, 615, 738, 753, 334,
    334, 697, 573, 896, 753, 765, 659, 765, 693, 648, 614, 730, 696, 993, 694, 651, 652, 411, 329, 411, 754,
    450, 450, 607, 644, 533, 644, 610, 391, 644, 641, 308, 308, 598, 308, 938, 641, 618, 644, 644, 444, 536,
    430, 641, 586, 831, 580, 586, 523, 641, 329, 641, 754,
];

/// The other faces of the style's list are wider than the condensed one; DejaVu Sans by a ninth.
const WIDER_FACES: f64 = 1.12;

/// Width of a sign outside ASCII when nothing is known of it, in thousandths of the size.
const UNKNOWN: u16 = 1000;

/// Width of a text in the widest face of the style's font list, px: for pictures made where no font can be asked.
#[must_use]
pub fn widths(words: &str, face: Face) -> f64 {
    let table = if face.weight() > 400 { &BOLD } else { &REGULAR };
    let thousandths: f64 = words.chars().map(|sign| f64::from(advance(table, sign))).sum();
    thousandths / 1000.0 * face.size() * WIDER_FACES
}

fn advance(table: &[u16; 95], sign: char) -> u16 {
    let plain = match sign {
        '\u{A0}' | '\u{202F}' => ' ',
        '−' | '×' => '+',
        '·' => '.',
        '°' => '^',
        '²' | '³' => '"',
        _ => sign,
    };
    let place = u32::from(plain).wrapping_sub(u32::from(' '));
    usize::try_from(place).ok().and_then(|place| table.get(place)).copied().unwrap_or(UNKNOWN)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn signs_without_an_entry_take_room() {
        assert!(widths("\u{4E2D}", Face::Plain) > widths("m", Face::Plain));
        assert!((widths("5\u{A0}mm", Face::Plain) - widths("5 mm", Face::Plain)).abs() < 1e-12);
    }
}
