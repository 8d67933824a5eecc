//! The crank as it is turned by Raise and Lower: so many turns from the lowest position, at a pace, until a stop.

/// Turned at a stroke where motion is unwelcome, and how often in a second.
const WHOLE_TURN: f64 = 1.0;
const STROKES_A_SECOND: f64 = 2.0;

/// Which way the crank is turned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// Downwards.
    Lower,
    /// Upwards.
    Raise,
}

impl Direction {
    const fn sign(self) -> f64 {
        match self {
            Self::Lower => -1.0,
            Self::Raise => 1.0,
        }
    }
}

/// How the turning is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Manner {
    /// At the crank's own pace.
    Smooth,
    /// A whole turn at a time, two a second, for those who do not want motion.
    Stepped,
}

impl Manner {
    /// The manner for somebody who wants less motion, or does not mind it.
    pub const fn for_reader(less_motion: bool) -> Self {
        if less_motion { Self::Stepped } else { Self::Smooth }
    }
}

/// A crank being turned.
#[derive(Clone, Copy, Debug)]
pub struct Turning {
    direction: Direction,
    manner: Manner,
    turns: f64,
    saved_seconds: f64,
}

impl Turning {
    /// Begins to turn from here, in turns from the lowest position.
    pub const fn begin(direction: Direction, manner: Manner, turns: f64) -> Self {
        Self { direction, manner, turns, saved_seconds: 0.0 }
    }

    /// The turns after so many more seconds at a pace (turns a minute), between 0 and `most`, and whether a stop is reached.
    pub fn advance(&mut self, seconds: f64, pace: f64, most: f64) -> (f64, bool) {
        self.saved_seconds += seconds;
        let by = match self.manner {
            Manner::Smooth => core::mem::take(&mut self.saved_seconds) * pace / 60.0,
            Manner::Stepped => {
                let strokes = (self.saved_seconds * STROKES_A_SECOND).floor();
                self.saved_seconds -= strokes / STROKES_A_SECOND;
                strokes * WHOLE_TURN
            }
        };
        let wanted = self.turns + self.direction.sign() * by;
        self.turns = wanted.clamp(0.0, most.max(0.0));
        let stopped = match self.direction {
            Direction::Lower => wanted <= 0.0,
            Direction::Raise => wanted >= most,
        };
        (self.turns, stopped)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(one: f64, two: f64) -> bool {
        (one - two).abs() < 1e-9
    }

    #[test]
    fn a_minute_gives_the_turns_of_the_pace() {
        let mut crank = Turning::begin(Direction::Raise, Manner::Smooth, 2.0);
        let mut turns = 0.0;
        for _ in 0..3600 {
            (turns, _) = crank.advance(1.0 / 60.0, 30.0, 100.0);
        }
        assert!(near(turns, 32.0), "{turns}");
    }

    #[test]
    fn it_ends_at_both_stops() {
        let mut up = Turning::begin(Direction::Raise, Manner::Smooth, 9.9);
        assert_eq!(up.advance(1.0, 30.0, 10.0), (10.0, true));
        let mut down = Turning::begin(Direction::Lower, Manner::Smooth, 0.1);
        assert_eq!(down.advance(1.0, 30.0, 10.0), (0.0, true));
    }

    #[test]
    fn without_motion_it_steps_twice_a_second() {
        let mut crank = Turning::begin(Direction::Raise, Manner::Stepped, 0.0);
        assert_eq!(crank.advance(0.4, 30.0, 10.0), (0.0, false));
        assert_eq!(crank.advance(0.2, 30.0, 10.0), (1.0, false));
        assert_eq!(crank.advance(0.4, 30.0, 10.0), (2.0, false));
    }
}
