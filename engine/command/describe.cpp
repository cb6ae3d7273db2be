#include "engine/command/report.hpp"

#include "engine/command/hex.hpp"
#include "sim/reading/observables.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace matula::command {
namespace {

constexpr reading::Stretch whole{0.05, 0.97};

void add(std::string& words, const std::string& more) {
  words += words.empty() ? more : ", " + more;
}

std::string kinds_of_pieces(const appearance::Appearance& looks) {
  static constexpr std::array<const char*, 5> names{"granules", "flocs", "clots", "crystals", "bubbles"};
  std::array<int, names.size()> counts{};
  for (const auto& piece : looks.pieces) {
    ++counts[static_cast<std::size_t>(piece.kind)];
  }
  std::string words;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (counts[i] > 0) {
      add(words, names[i]);
    }
  }
  return words;
}

std::string in_words(const appearance::Appearance& looks, double print_contrast) {
  std::string words = fmt::format("filled to {:.0f} mm", looks.level_mm);
  add(words, fmt::format("{:.0f} % of the print's contrast comes through", 100 * print_contrast));
  if (const auto pieces = kinds_of_pieces(looks); !pieces.empty()) {
    add(words,
        fmt::format("{} (half of their bulk above {:.2g} mm)", pieces, reading::median_piece_size_mm(looks)));
  }
  if (looks.clot_fraction > 0) {
    add(words, fmt::format("one clot over {:.0f} % of the height", 100 * looks.clot_fraction));
  }
  if (looks.sediment.height_mm > 0.05) {
    add(words, fmt::format("{:.1f} mm of deposit", looks.sediment.height_mm));
  }
  if (looks.boiling > 0) {
    add(words, "boiling");
  }
  if (looks.foam_mm > 0.5) {
    add(words, fmt::format("{:.0f} mm of foam", looks.foam_mm));
  }
  return words;
}

} // namespace

std::vector<SeenThing> describe(const bench::Scene& white, const bench::Scene& printed) {
  std::vector<SeenThing> things;
  for (std::size_t i = 0; i < white.vessels.size() && i < printed.vessels.size(); ++i) {
    const auto& vessel = white.vessels[i];
    if (vessel.looks.level_mm <= 0) {
      continue;
    }
    SeenThing thing;
    thing.name = vessel.name;
    thing.colour_hex = hex_colour(optics::to_display(reading::mean_colour_on_white(vessel.looks, whole)));
    thing.print_contrast = reading::mean_print_contrast(printed.vessels[i].looks, whole);
    thing.words = in_words(vessel.looks, thing.print_contrast);
    things.push_back(std::move(thing));
  }
  if (white.floating) {
    SeenThing thing;
    thing.name = "urinometer in " + white.floating->vessel;
    thing.words =
        fmt::format("the surface cuts the scale at {:.4f}", white.floating->scale.reading_at_surface);
    things.push_back(std::move(thing));
  }
  return things;
}

} // namespace matula::command
