//! Short lists in order.
use core::cmp::Ordering;

/// Sorts a short list where it stands; what is equal keeps its order. Time grows as the square of the length: a list that
/// grows with what is kept, or as pairs of parts do, is for the library's own sort. That takes four kilobytes for every kind of list, for which the page waits.
pub fn order<T>(list: &mut [T], by: impl Fn(&T, &T) -> Ordering) {
    for end in 1..list.len() {
        let mut at = end;
        while at > 0 && by(&list[at - 1], &list[at]) == Ordering::Greater {
            list.swap(at - 1, at);
            at -= 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::order;

    #[test]
    fn orders_as_the_library_does() {
        let mut state = 7_u32;
        for length in 0..40 {
            let mut list: Vec<(u32, usize)> = (0..length)
                .map(|place| {
                    state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                    (state >> 29, place)
                })
                .collect();
            let mut wanted = list.clone();
            wanted.sort_by_key(|(key, _)| *key);
            order(&mut list, |one, other| one.0.cmp(&other.0));
            assert_eq!(list, wanted);
        }
    }
}
