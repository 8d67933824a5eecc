//! A link as a scannable code (ISO/IEC 18004), for those who hold the paper and not the screen.
use crate::drawing::write;
use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

/// Up to this version, 85 modules a side, a code is tried with the strongest correction first: on 50 mm of paper its modules are then
/// over half a millimetre wide, which any telephone reads from print (common practice, no source).
const ROOMY: u8 = 17;

/// The light rim a reader needs around the code, modules (ISO/IEC 18004).
const RIM: i32 = 4;

/// A text as dark and light modules.
pub struct Code {
    modules: QrCode,
}

impl Code {
    /// The code of a text, its error correction as high as leaves the modules large enough, beyond that as low as it may be; none where the
    /// text is longer than any code holds, 2953 bytes.
    #[must_use]
    pub fn of(text: &str) -> Option<Self> {
        let segments = QrSegment::make_segments(text);
        let tried = |level, most| {
            QrCode::encode_segments_advanced(&segments, level, Version::MIN, most, None, true).ok()
        };
        [QrCodeEcc::High, QrCodeEcc::Quartile, QrCodeEcc::Medium, QrCodeEcc::Low]
            .into_iter()
            .find_map(|level| tried(level, Version::new(ROOMY)))
            .or_else(|| tried(QrCodeEcc::Low, Version::MAX))
            .map(|modules| Self { modules })
    }

    /// Modules a side, with the light rim.
    #[must_use]
    pub fn side(&self) -> i32 {
        self.modules.size() + 2 * RIM
    }

    /// Whether a module is dark, counted from the upper left corner of the rim.
    #[must_use]
    pub fn is_dark(&self, column: i32, row: i32) -> bool {
        self.modules.get_module(column - RIM, row - RIM)
    }

    /// All dark modules as one outline in the notation of an SVG `d` attribute, a module one unit wide.
    #[must_use]
    pub fn notation(&self) -> String {
        let mut d = String::new();
        for row in 0..self.side() {
            let mut column = 0;
            while column < self.side() {
                let length = (column..self.side()).take_while(|at| self.is_dark(*at, row)).count();
                let length = i32::try_from(length).unwrap_or(0);
                if length > 0 {
                    write(&mut d, format_args!("M{column} {row}h{length}v1h-{length}z"));
                }
                column += length + 1;
            }
        }
        d
    }
}
