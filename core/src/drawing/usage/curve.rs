//! Curves with no more points than an eye can tell.
use crate::drawing::outline::write;
use crate::drawing::scale::Screen;

/// The points that are needed so that no point left out lies farther than `apart`, px, from the line through those kept: the method of
/// Ramer, Douglas and Peucker.
pub(super) fn thinned(points: &[Screen], apart: f64) -> Vec<Screen> {
    let (Some(first), Some(last)) = (points.first(), points.last()) else { return Vec::new() };
    let mut kept = vec![*first];
    between(points, apart, &mut kept);
    if points.len() > 1 {
        kept.push(*last);
    }
    kept
}

/// Adds the points needed between the first and the last.
fn between(points: &[Screen], apart: f64, kept: &mut Vec<Screen>) {
    let (Some(first), Some(last)) = (points.first(), points.last()) else { return };
    let (from, span) = (first.vector(), last.vector() - first.vector());
    let off = |point: &Screen| {
        let along = point.vector() - from;
        let part = (along.dot(span) / span.length_squared().max(1e-12)).clamp(0.0, 1.0);
        (along - part * span).length()
    };
    let inner = points.iter().enumerate().take(points.len().saturating_sub(1)).skip(1);
    let farthest =
        inner.map(|(place, point)| (place, off(point))).max_by(|one, other| one.1.total_cmp(&other.1));
    if let Some((place, distance)) = farthest
        && distance > apart
    {
        between(&points[..=place], apart, kept);
        kept.push(points[place]);
        between(&points[place..], apart, kept);
    }
}

/// A line through points in the notation of an SVG `d` attribute, to a tenth of a pixel.
pub(super) fn notation(points: &[Screen]) -> String {
    let tenth = |value: f64| (value * 10.0).round() / 10.0;
    let mut d = String::new();
    for (place, point) in points.iter().enumerate() {
        let command = if place == 0 { 'M' } else { 'L' };
        write(&mut d, format_args!("{command}{} {}", tenth(point.x), tenth(point.y)));
    }
    d
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_straight_run_keeps_its_ends_and_a_corner_stays() {
        let straight: Vec<Screen> = (0..50).map(|x| Screen::new(f64::from(x), 7.0)).collect();
        assert_eq!(thinned(&straight, 0.1).len(), 2);
        let bent: Vec<Screen> =
            (0..50).map(|x| Screen::new(f64::from(x), f64::from((x - 20).max(0)))).collect();
        let kept = thinned(&bent, 0.1);
        assert_eq!(kept.iter().map(|point| point.x).collect::<Vec<_>>(), [0.0, 20.0, 49.0]);
        assert!(thinned(&[], 0.1).is_empty() && thinned(&bent[..1], 0.1).len() == 1);
    }

    #[test]
    fn no_point_left_out_lies_far_from_the_line() {
        let round: Vec<Screen> =
            (0..=200).map(|step| f64::from(step) / 20.0).map(|t| Screen::new(t, 40.0 / (1.0 + t))).collect();
        let kept = thinned(&round, 0.2);
        assert!(kept.len() < 30, "{}", kept.len());
        for point in &round {
            let near = kept.windows(2).map(|pair| {
                let (from, span) = (pair[0].vector(), pair[1].vector() - pair[0].vector());
                let part = ((point.vector() - from).dot(span) / span.length_squared()).clamp(0.0, 1.0);
                (from + part * span - point.vector()).length()
            });
            assert!(near.fold(f64::INFINITY, f64::min) <= 0.2);
        }
    }
}
