#include "engine/render/glass.hpp"
#include "engine/render/hash.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

namespace matula::render {

namespace {

using Glyph = std::array<const char*, 5>; ///< Three by five dots, from the top.

const std::map<char, Glyph>& glyphs() {
  static const std::map<char, Glyph> all{
      {'0', {"###", "#.#", "#.#", "#.#", "###"}}, {'1', {".#.", "##.", ".#.", ".#.", "###"}},
      {'2', {"###", "..#", "###", "#..", "###"}}, {'3', {"###", "..#", ".##", "..#", "###"}},
      {'4', {"#.#", "#.#", "###", "..#", "..#"}}, {'5', {"###", "#..", "###", "..#", "###"}},
      {'6', {"###", "#..", "###", "#.#", "###"}}, {'7', {"###", "..#", ".#.", ".#.", ".#."}},
      {'8', {"###", "#.#", "###", "#.#", "###"}}, {'9', {"###", "#.#", "###", "..#", "###"}},
      {'.', {"...", "...", "...", "...", ".#."}}, {'U', {"#.#", "#.#", "#.#", "#.#", "###"}},
      {'R', {"##.", "#.#", "##.", "#.#", "#.#"}}};
  return all;
}

constexpr double dot_mm = 0.42; // letters two millimetres high
constexpr float ink_bar = 5;    // kind of piece.frag

DrawnPiece bar(double x_mm, double height_mm, double wide_mm, double tall_mm, bool light) {
  const float shade = light ? 0.75F : 0.06F;
  DrawnPiece d;
  d.x_mm = static_cast<float>(x_mm);
  d.height_mm = static_cast<float>(height_mm);
  d.wide_mm = static_cast<float>(wide_mm);
  d.tall_mm = static_cast<float>(tall_mm);
  d.rgb = {shade, shade, shade};
  d.opacity = 0.9F;
  d.kind = ink_bar;
  return d;
}

void write(std::vector<DrawnPiece>& out, const std::string& label, double x_mm, double middle_mm,
           bool light) {
  for (const char letter : label) {
    const auto found = glyphs().find(letter);
    if (found != glyphs().end()) {
      for (std::size_t row = 0; row < found->second.size(); ++row) {
        for (int column = 0; column < 3; ++column) {
          if (found->second[row][column] == '#') {
            out.push_back(bar(x_mm + (column + 0.5) * dot_mm,
                              middle_mm + (2 - static_cast<double>(row)) * dot_mm, dot_mm, dot_mm, light));
          }
        }
      }
    }
    x_mm += 4 * dot_mm;
  }
}

} // namespace

std::vector<DrawnPiece> glass_marks(const appearance::Appearance& looks) {
  std::vector<DrawnPiece> out;
  const double radius = looks.inner_diameter_mm / 2;
  const bool light = looks.view.card == appearance::Card::Black;
  for (const column::GlassMark& mark : looks.marks) {
    out.push_back(bar(-0.25 * radius, mark.height_mm, 0.7 * radius, 0.25, light));
    write(out, mark.label, 0.2 * radius, mark.height_mm, light);
  }
  return out;
}

std::vector<DrawnPiece> strewn_grains(const appearance::Appearance& looks) {
  std::vector<DrawnPiece> out;
  if (!looks.powder || looks.powder->grain_mm <= 0) {
    return out;
  }
  const double radius = looks.inner_diameter_mm / 2;
  const double share = looks.powder->grain_mm / 2 / radius;
  constexpr double most_drawn = 700;
  const double there = -std::log(std::max(1e-6, 1 - looks.powder->cover)) / (share * share);
  const auto count = static_cast<std::uint32_t>(std::min(there, most_drawn));
  // Fewer are drawn than there are, each larger by as much.
  const double size_mm = looks.powder->grain_mm *
                         std::clamp(std::sqrt(there / std::max(1.0, static_cast<double>(count))), 1.0, 3.0);
  const auto rgb = shown(looks.powder->colour);
  constexpr double seen_from_above =
      0.06; // height of the surface's ellipse against its width, as in vessel.frag
  for (std::uint32_t i = 0; i < count; ++i) {
    const double out_share = std::sqrt(unit_of(i * 5U + looks.grain_seed));
    const double angle = 2 * std::acos(-1.0) * unit_of(i * 5U + 1U + looks.grain_seed);
    DrawnPiece d;
    d.x_mm = static_cast<float>(0.96 * radius * out_share * std::cos(angle));
    d.height_mm = static_cast<float>(looks.level_mm + looks.meniscus_rise_mm * std::pow(out_share, 6.0) -
                                     seen_from_above * radius * out_share * std::sin(angle));
    d.wide_mm = static_cast<float>(size_mm);
    d.tall_mm = static_cast<float>(size_mm);
    d.rgb = rgb;
    d.opacity = 0.95F;
    d.kind = static_cast<float>(appearance::PieceKind::Granule);
    d.seed = static_cast<float>(unit_of(i * 5U + 2U));
    out.push_back(d);
  }
  return out;
}

} // namespace matula::render
