//! Places for lettering in a row: each as near to its own as the others let it.

/// The places nearest to the wanted ones, in the sense of least squares, that keep at least a gap between neighbours and stay between two
/// bounds, where they fit there. The wanted places are in order.
///
/// Pool adjacent violators: R. E. Barlow et al., Statistical Inference under Order Restrictions (1972), chapter 1, after taking the gaps off.
pub(super) fn spread(wanted: &[f64], gap: f64, [least, most]: [f64; 2]) -> Vec<f64> {
    let offset = |at: usize| at as f64 * gap;
    // Blocks of places that stick together: mean and count.
    let mut blocks: Vec<(f64, usize)> = Vec::new();
    for (at, place) in wanted.iter().enumerate() {
        blocks.push((place - offset(at), 1));
        while let [.., (before, many), (last, few)] = blocks.as_slice() {
            if before <= last {
                break;
            }
            let count = many + few;
            let mean = (before * *many as f64 + last * *few as f64) / count as f64;
            blocks.truncate(blocks.len() - 2);
            blocks.push((mean, count));
        }
    }
    let most = (most - offset(wanted.len().saturating_sub(1))).max(least);
    let pooled =
        blocks.iter().flat_map(|(mean, count)| core::iter::repeat_n(mean.clamp(least, most), *count));
    pooled.enumerate().map(|(at, place)| place + offset(at)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_keep_their_gap_and_stay_near() {
        let free = [10.0, 40.0, 80.0];
        assert_eq!(spread(&free, 12.0, [0.0, 100.0]), free, "what has room stands where it is wanted");
        let close = spread(&[50.0, 52.0, 54.0], 12.0, [0.0, 100.0]);
        assert_eq!(close, [40.0, 52.0, 64.0], "around their middle");
        let edge = spread(&[0.0, 1.0, 99.0, 100.0], 12.0, [0.0, 100.0]);
        assert_eq!(edge, [0.0, 12.0, 88.0, 100.0]);
        for pair in spread(&[3.0, 3.0, 3.0, 3.1, 30.0, 31.0, 90.0], 9.0, [0.0, 95.0]).windows(2) {
            assert!(pair[1] - pair[0] >= 9.0 - 1e-9);
        }
    }
}
