#pragma once

#include "engine/render/lettering.hpp"

#include <string>
#include <vector>

namespace matula::render {

/// Words as they stand on a paper label.
struct FittedLabel {
  std::vector<std::string> lines;
  double size_px = 0; ///< Letter height, ascent to descent.
};

/// Breaks `text` between words so that its letters become as large as `width` and `height` (px) allow, at
/// most `largest_px`. "\n" in the text breaks where it stands and nowhere else.
[[nodiscard]] FittedLabel fit_label(const Lettering& lettering, const std::string& text, double width,
                                    double height, double largest_px);

} // namespace matula::render
