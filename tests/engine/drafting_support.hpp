#pragma once

#include "author_support.hpp"

#include "engine/drafting/form.hpp"
#include "engine/drafting/studio.hpp"
#include "engine/strict/file.hpp"

#include <cstdlib>
#include <filesystem>
#include <memory>
#include <string>

namespace matula::test {

namespace fs = std::filesystem;

inline const fs::path scenarios = MATULA_SOURCE_DIR "/scenarios";

inline std::string text_of(const fs::path& file) {
  std::string text;
  REQUIRE(strict::read_text(file, text));
  return text;
}

inline const matter::Catalogue& catalogue() {
  return shelf().world->catalogue;
}

/// A folder of its own, gone with the test.
struct Folder {
  Folder() {
    std::string name = (fs::temp_directory_path() / "drafting-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    path = name;
  }
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  fs::path path;
};

inline std::unique_ptr<drafting::Studio> studio_in(const fs::path& own) {
  auto studio = drafting::Studio::open(*shelf().world, standards(), {assets::folder(), own, scenarios});
  if (!studio) {
    FAIL(scenario::to_text(studio.error()));
  }
  return std::move(*studio);
}

inline std::string value_in(const drafting::Studio& studio, const std::string& path) {
  const auto* row = drafting::find_row(studio.form(), path);
  return row == nullptr ? "(no row)" : row->value;
}

} // namespace matula::test
