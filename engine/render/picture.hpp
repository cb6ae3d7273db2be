#pragma once

#include "engine/render/layout.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace matula::render {

/// Eight-bit sRGB picture, rows from the top, four bytes a pixel.
struct Picture {
  int width = 0;
  int height = 0;
  std::vector<std::uint8_t> rgba;

  [[nodiscard]] const std::uint8_t* at(int x, int y) const {
    return rgba.data() + 4 * (static_cast<std::ptrdiff_t>(y) * width + x);
  }
};

/// Pictures drawn without any screen. Every function makes its own offscreen context, so call them where no
/// other context is current; errors say what is missing (OpenGL, a shader, a font) and what to install or
/// set.
[[nodiscard]] tl::expected<Picture, std::string> bench_picture(const std::filesystem::path& assets_folder,
                                                               const bench::Scene& scene, const Show& show,
                                                               int width, int height);

/// Vessels large, side by side, each against its own card, with no words: for readers who must not know what
/// they see.
[[nodiscard]] tl::expected<Picture, std::string>
tube_picture(const std::filesystem::path& assets_folder,
             const std::vector<appearance::Appearance>& side_by_side, int width, int height);

/// The framebuffer bound now; needs a current context.
[[nodiscard]] Picture read_back(int width, int height);

[[nodiscard]] tl::expected<void, std::string> write_png(const Picture& picture,
                                                        const std::filesystem::path& file);

[[nodiscard]] tl::expected<void, std::string> write_bench_picture(const std::filesystem::path& assets_folder,
                                                                  const bench::Scene& scene, const Show& show,
                                                                  const std::filesystem::path& file,
                                                                  int width, int height);
[[nodiscard]] tl::expected<void, std::string>
write_tube_picture(const std::filesystem::path& assets_folder,
                   const std::vector<appearance::Appearance>& side_by_side, const std::filesystem::path& file,
                   int width, int height);

} // namespace matula::render
