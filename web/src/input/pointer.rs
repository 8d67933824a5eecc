//! A pointer that holds a grip of the drawing.
use risewright::drawing::Screen;

/// What can be taken hold of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grip {
    /// The ring at the carriage: moves along its rail.
    Carriage,
    /// The deck: moves up and down.
    Deck,
}

#[derive(Clone, Copy, Debug)]
struct Hold {
    grip: Grip,
    pointer: i32,
    /// From the pointer to the grip, so that nothing jumps when it is taken.
    offset: (f64, f64),
    /// Where the deck stood.
    height: f64,
}

/// Free, or holding one grip with one pointer; a second finger changes nothing.
#[derive(Clone, Copy, Debug, Default)]
pub struct Pointing(Option<Hold>);

impl Pointing {
    /// A pointer comes down at a place, on a grip that stands at a place while the deck stands at a height.
    /// Returns whether it now holds it.
    pub fn press(&mut self, grip: Grip, pointer: i32, at: Screen, grip_at: Screen, height: f64) -> bool {
        if self.0.is_some() {
            return false;
        }
        self.0 = Some(Hold { grip, pointer, offset: (grip_at.x - at.x, grip_at.y - at.y), height });
        true
    }

    /// The pointer moves: the grip it holds and where that should stand now.
    pub fn moved(&self, pointer: i32, at: Screen) -> Option<(Grip, Screen)> {
        let hold = self.0.filter(|hold| hold.pointer == pointer)?;
        Some((hold.grip, Screen::new(at.x + hold.offset.0, at.y + hold.offset.1)))
    }

    /// The pointer lets go. Returns whether it held anything.
    pub fn release(&mut self, pointer: i32) -> bool {
        let held = self.0.is_some_and(|hold| hold.pointer == pointer);
        if held {
            self.0 = None;
        }
        held
    }

    /// Lets go and tells the height to return to.
    pub fn abandon(&mut self) -> Option<f64> {
        self.0.take().map(|hold| hold.height)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn at(x: f64, y: f64) -> Screen {
        Screen::new(x, y)
    }

    #[test]
    fn the_grip_keeps_its_distance_from_the_pointer() {
        let mut pointing = Pointing::default();
        assert!(pointing.press(Grip::Deck, 1, at(100.0, 200.0), at(104.0, 195.0), 0.7));
        assert_eq!(pointing.moved(1, at(90.0, 180.0)), Some((Grip::Deck, at(94.0, 175.0))));
        assert!(pointing.release(1));
        assert_eq!(pointing.moved(1, at(0.0, 0.0)), None);
    }

    #[test]
    fn a_second_finger_changes_nothing() {
        let mut pointing = Pointing::default();
        assert!(pointing.press(Grip::Carriage, 1, at(0.0, 0.0), at(0.0, 0.0), 0.7));
        assert!(!pointing.press(Grip::Deck, 2, at(0.0, 0.0), at(0.0, 0.0), 0.7));
        assert_eq!(pointing.moved(2, at(9.0, 9.0)), None);
        assert!(!pointing.release(2));
        assert_eq!(pointing.abandon(), Some(0.7));
        assert_eq!(pointing.abandon(), None);
    }
}
