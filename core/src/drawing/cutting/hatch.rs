//! Hatching at 45 degrees (ISO 128-3).
use crate::drawing::frame::Area;
use crate::drawing::outline::{tidy, write};

/// From one line to the next along the edge, px.
const STEP: f64 = 9.0;

/// Lines that rise to the right, clipped to an area and in step with those of every other area of the figure; empty for an area of no size.
pub(super) fn hatch(area: &Area) -> String {
    let mut d = String::new();
    if !(area.width > 0.0 && area.height > 0.0) {
        return d;
    }
    // On a line x + y is the same everywhere.
    let (first, last) = (area.x + area.y, area.right() + area.bottom());
    let mut sum = (first / STEP).floor() * STEP + STEP;
    while sum < last {
        let left = area.x.max(sum - area.bottom());
        let right = area.right().min(sum - area.y);
        write(
            &mut d,
            format_args!("M{} {}L{} {}", tidy(left), tidy(sum - left), tidy(right), tidy(sum - right)),
        );
        sum += STEP;
    }
    d
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Ends of every line, from the notation.
    fn lines(d: &str) -> Vec<[f64; 4]> {
        d.split('M')
            .skip(1)
            .map(|line| {
                let numbers: Vec<f64> =
                    line.split(['L', ' ']).map(|number| number.parse().unwrap_or(f64::NAN)).collect();
                [numbers[0], numbers[1], numbers[2], numbers[3]]
            })
            .collect()
    }

    #[test]
    fn lines_rise_at_45_degrees_and_stay_inside() {
        let area = Area { x: 13.0, y: 40.0, width: 120.0, height: 33.0 };
        let found = lines(&hatch(&area));
        assert!(found.len() > 10);
        for [x1, y1, x2, y2] in found {
            assert!((x2 - x1 - (y1 - y2)).abs() < 0.02, "45 degrees");
            for (x, y) in [(x1, y1), (x2, y2)] {
                assert!(
                    x > area.x - 0.01
                        && x < area.right() + 0.01
                        && y > area.y - 0.01
                        && y < area.bottom() + 0.01
                );
            }
        }
        assert_eq!(hatch(&Area::default()), "");
    }
}
