#pragma once

#include "engine/assets/world.hpp"
#include "sim/paper/pad_look.hpp"
#include "sim/reading/paper.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>

namespace matula::test {

inline const assets::World& paper_world() {
  static const auto loaded = assets::load(std::string(MATULA_SOURCE_DIR) + "/assets");
  if (!loaded) {
    throw std::runtime_error(loaded.error().front().file + ": " + loaded.error().front().found);
  }
  return **loaded;
}

/// The clean specimen of the reference cards: the first level of the sugar pad.
inline specimen::Specimen clean_urine() {
  for (const auto& pad : paper_world().papers.back().pads) {
    if (pad.key == "glucose") {
      return pad.levels.front().specimen;
    }
  }
  throw std::runtime_error("the strip has a pad for glucose");
}

/// Clean urine with something in it.
inline specimen::Specimen with(const std::string& species, double mg_per_dl,
                               specimen::Specimen base = clean_urine()) {
  base.mg_per_dl.emplace_back(species, mg_per_dl);
  return base;
}

inline optics::Lab lab_of(const optics::Spectrum& light) {
  return optics::to_lab(paper::colour_of(light, paper_world().optics.colorimetry, optics::Lamp::Daylight),
                        optics::d65_white);
}

struct OnPaper {
  optics::Lab colour;
  reading::PaperReading reading;
};

/// A pad of a paper done by the book in a specimen, read at its time or at `seconds`.
inline OnPaper on_paper(const std::string& kind_key, const std::string& pad_key,
                        const specimen::Specimen& urine, double seconds = 0) {
  const assets::World& world = paper_world();
  for (const auto& kind : world.papers) {
    for (std::size_t i = 0; kind.key == kind_key && i < kind.pads.size(); ++i) {
      const paper::PadKind& pad = kind.pads[i];
      if (pad.key != pad_key) {
        continue;
      }
      const auto liquid = specimen::make_liquid(urine, world.catalogue);
      const auto dipped =
          paper::dipped_pad(pad, liquid, world.chemistry, 22, seconds > 0 ? seconds : pad.read_at_s);
      std::vector<reading::CardEntry> row;
      for (const auto& field : world.cards.at(kind_key)[i]) {
        row.push_back({field.word, field.value, lab_of(field.reflectance)});
      }
      const auto lab = lab_of(paper::reflectance(dipped, pad, world.catalogue, world.optics.scatter));
      return {lab, reading::read_paper(lab, row)};
    }
  }
  throw std::runtime_error("no pad " + kind_key + "." + pad_key);
}

inline reading::PaperReading strip(const std::string& pad, const specimen::Specimen& urine,
                                   double seconds = 0) {
  return on_paper("strip", pad, urine, seconds).reading;
}

/// Least dose, mg/dL, that the reader calls more than the first word of the pad.
inline double least_seen(const std::string& pad, const std::string& species, double from, double to) {
  double low = from;
  double high = to;
  for (int i = 0; i < 12; ++i) {
    const double middle = 0.5 * (low + high);
    (strip(pad, with(species, middle)).entry > 0 ? high : low) = middle;
  }
  return high;
}

} // namespace matula::test
