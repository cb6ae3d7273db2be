#pragma once

#include <tl/expected.hpp>

#include <cstdint>
#include <string>
#include <vector>

namespace matula::render {

/// Grey picture for ink on paper: 255 bare, 0 full ink; rows from the top.
struct Canvas {
  int width = 0;
  int height = 0;
  std::vector<std::uint8_t> ink;

  Canvas(int w, int h)
      : width(w), height(h), ink(static_cast<std::size_t>(w) * static_cast<std::size_t>(h), 255) {}
  /// Fills a rectangle, edges weighted by the part of a pixel they cover.
  void bar(double x, double y, double w, double h, double darkness = 1);
};

/// Prints words with the installed font.
class Lettering {
public:
  /// Looks for Noto Sans where Debian puts it; the error names the package.
  [[nodiscard]] static tl::expected<Lettering, std::string> load();
  /// Width in pixels of one line at a letter height of `size_px` (ascent to descent).
  [[nodiscard]] double width(const std::string& line, double size_px) const;
  /// Prints one line with its left end at x and the top of its letters' box at y.
  void print(Canvas& canvas, const std::string& line, double x, double y, double size_px) const;

private:
  std::vector<std::uint8_t> font_;
};

/// The card with bars and lines of words that is held behind a tube to judge cloud.
inline constexpr double print_px_per_mm = 10;
inline constexpr double print_width_mm = 60;
inline constexpr double print_height_mm = 160;
[[nodiscard]] Canvas printed_card(const Lettering& lettering);

/// The paper scale in a float's stem, from 1.000 at the top to `end`, with `margin_mm` of bare paper at both
/// ends.
inline constexpr double scale_px_per_mm = 20;
inline constexpr double scale_margin_mm = 3;
[[nodiscard]] Canvas float_scale(const Lettering& lettering, double length_mm, double width_mm, double end);

/// Height below the 1.000 line at which `reading` stands; equal volumes of stem stand for equal steps of
/// 1/density.
[[nodiscard]] double mark_depth_mm(double reading, double length_mm, double end);

} // namespace matula::render
