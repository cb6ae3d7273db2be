#pragma once

namespace matula::instrument {

/// A filter photometer that takes the tube itself.
struct Photometer {
  double lowest_nm = 400;
  double highest_nm = 700;
  double step = 0.001;        ///< Of the display.
  double stray_share = 0.003; ///< Light that reaches the detector past any specimen; sets the ceiling.
  double flicker = 0.001;     ///< Half width of the last digits' play.
  double acceptance_deg = 3;  ///< Light turned by less still reaches the detector.
  double beam_from_mm = 8;    ///< Height of the beam above the tube's inside bottom.
  double beam_to_mm = 20;
};

/// What the display shows for a decadic extinction of `specimen` after a zero on `blank` (0 when none was
/// set); `chance` 0..1 is the flicker of this reading.
struct Display {
  double absorbance = 0;
  bool over = false; ///< Within a tenth of the ceiling that stray light sets.
};
[[nodiscard]] Display show(const Photometer& photometer, double specimen, double blank, double chance);

} // namespace matula::instrument
