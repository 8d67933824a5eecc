//! What a change of the design costs more.
use super::hardware::{Item, Price, bill};
use crate::design::Design;
use crate::parts::{Part, parts};
use crate::quantity::Money;

/// Areas of sheet closer than this are the same, m2.
const SAME_AREA: f64 = 1e-9;

/// What the second design costs more than the first: bought parts, and sheet by its area, since a whole sheet may already be paid for. What
/// counts among the small parts is left out. None where a price that matters has not been entered.
#[must_use]
pub fn added(before: &Design, after: &Design) -> Option<Money> {
    let lists = [before, after].map(parts);
    let bills = [bill(before, &lists[0], &[], &[]), bill(after, &lists[1], &[], &[])];
    let [fewer, more] = [0, 1].map(|side| {
        let others = &bills[1 - side].items;
        bills[side].items.iter().filter(move |item| !others.iter().any(|other| is_same(item, other)))
    });
    if fewer.chain(more).any(|item| item.price == Price::Open) {
        return None;
    }
    let [first, second] = [0, 1].map(|side| area(&lists[side]));
    let sheet = if (second - first).abs() < SAME_AREA {
        Money::ZERO
    } else {
        let shop = &after.shop;
        if shop.sheet_price == Money::ZERO {
            return None;
        }
        let whole = shop.sheet_length.to_m() * shop.sheet_width.to_m();
        Money::of(shop.sheet_price.value() * (second - first) / whole)
    };
    Some(bills[1].cost - bills[0].cost + sheet)
}

/// Whether a row of one bill stands in another as it is.
fn is_same(item: &Item, other: &Item) -> bool {
    (item.name, item.count, item.size, item.price) == (other.name, other.count, other.size, other.price)
}

/// Area of sheet in parts, m2.
fn area(list: &[Part]) -> f64 {
    list.iter().map(Part::sheet_area).sum()
}

#[cfg(test)]
mod tests {
    use super::added;
    use crate::design::Demo;
    use crate::quantity::{Count, Money, Rate};

    #[test]
    fn without_prices_a_cost_is_not_known() {
        let before = Demo::PaperLift.design();
        let mut after = before.clone();
        after.arms.layers = Count::of(3);
        assert_eq!(added(&before, &after), None);
        assert_eq!(added(&before, &before), Some(Money::ZERO));
    }

    #[test]
    fn sheet_counts_by_its_area_and_bars_by_their_length() {
        let mut before = Demo::PaperLift.design();
        before.shop.sheet_price = Money::of(90.0);
        before.shop.bar_price = Rate::a_metre(4.0);
        before.arms.straps_a = false;
        before.arms.boards_b = false;
        let mut boards = before.clone();
        boards.arms.boards_b = true;
        // Four boards of 70 mm between arms B: their area over that of the sheet, 1.525 m square.
        let cost = added(&before, &boards).map(Money::value);
        let length = crate::parts::arm_spread(&before, true).to_m();
        let least = 90.0 * 4.0 * (length - 0.036) * 0.070 / (1.525 * 1.525);
        assert!(cost.is_some_and(|cost| cost > least * 0.98 && cost < least * 1.15), "{cost:?} {least}");
        let mut straps = before.clone();
        straps.arms.straps_a = true;
        let metres = 4.0 * crate::parts::strap_span(&before, false).to_m();
        let cost = added(&before, &straps).map(Money::value);
        assert!(
            cost.is_some_and(|cost| cost > 4.0 * metres && cost < 4.0 * metres * 1.3),
            "{cost:?} {metres}"
        );
    }
}
