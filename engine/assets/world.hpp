#pragma once

#include "engine/scenario/problem.hpp"
#include "sim/appearance/optics_tables.hpp"
#include "sim/bench/bench.hpp"
#include "sim/paper/card.hpp"
#include "sim/reading/reference_reader.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <map>
#include <memory>
#include <string>

namespace matula::assets {

/// Everything the world is made of, read from the assets folder once and never changed.
struct World {
  matter::Catalogue catalogue;
  column::Chemistry chemistry; ///< Points at `catalogue`.
  appearance::OpticsTables optics;
  std::map<std::string, column::VesselShape> shapes;
  instrument::Urinometer urinometer;
  bench::Tools tools;
  std::vector<paper::PaperKind> papers;
  std::map<std::string, paper::Card> cards; ///< By kind of paper, computed from `papers`.
  reading::Thresholds thresholds;
  std::map<std::string, std::string> cautions; ///< Key to wording.
};

/// The assets folder: $MATULA_ASSETS, or beside the program's source, or beside the program.
[[nodiscard]] std::filesystem::path folder();

/// Species, particles and reagents only; for tools and tests that need no more. Adds to `problems`.
[[nodiscard]] matter::Catalogue load_catalogue(const std::filesystem::path& folder,
                                               scenario::Problems& problems);

/// Reads everything and reports every problem of every file. Never moved after loading: `chemistry` points
/// into it.
[[nodiscard]] tl::expected<std::unique_ptr<const World>, scenario::Problems>
load(const std::filesystem::path& folder);

} // namespace matula::assets
