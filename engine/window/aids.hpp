#pragma once

#include <filesystem>

namespace matula::window {

/// What makes the window fit for more eyes and hands. What was on is written in every sitting.
struct Aids {
  float text_scale = 1; ///< 1 to 2.
  bool still = false;   ///< Nothing on the screen moves by itself; a wait is over at once.
  bool hues = false;    ///< The colour under the pointer is named in words.
};

/// As kept in the folder of the sittings; those of `otherwise` where nothing readable is kept.
[[nodiscard]] Aids load_aids(const std::filesystem::path& folder, const Aids& otherwise);

/// Kept for the next time; a disk that refuses is no reason to stop.
void keep_aids(const std::filesystem::path& folder, const Aids& aids);

} // namespace matula::window
