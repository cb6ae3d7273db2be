#pragma once

#include <filesystem>
#include <iosfwd>

namespace matula::desk {
class Ground;
}

namespace matula::window {

struct Options {
  std::filesystem::path scenarios;     ///< Folder the start screen lists.
  std::filesystem::path sittings;      ///< Folder new sittings are written to.
  std::filesystem::path open_scenario; ///< Opened at once; empty for the start screen.
  float text_scale = 1.0F;             ///< 1 to 2.
};

/// Opens the bench and returns when it is closed: 0, or 1 with the reason on `err`.
int run(const desk::Ground& ground, const Options& options, std::ostream& err);

} // namespace matula::window
