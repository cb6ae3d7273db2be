#pragma once

#include "sim/appearance/appearance.hpp"

#include <vector>

namespace matula::render {

/// A height of a vessel in which one set of things is to be seen, so that each is drawn with no more work
/// than it needs.
struct Band {
  enum class Part { Dry, Surface, Under };
  double from_mm = 0;
  double to_mm = 0;
  Part part = Part::Dry;
  bool clot = false;
  bool bed = false;
  bool hot = false; ///< Foam, steam or boiling.
};

/// Cuts `from_mm`..`to_mm` of a vessel into bands, bottom to top, with no gap.
[[nodiscard]] std::vector<Band> bands(const appearance::Appearance& looks, double from_mm, double to_mm);

} // namespace matula::render
