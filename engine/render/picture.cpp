#include "engine/render/picture.hpp"

#include "engine/render/bench_view.hpp"
#include "engine/render/gl.hpp"
#include "engine/render/offscreen.hpp"

#include <stb/stb_image_write.h>

#include <algorithm>

namespace matula::render {

Picture read_back(int width, int height) {
  Picture picture{width, height, std::vector<std::uint8_t>(4 * static_cast<std::size_t>(width * height))};
  glPixelStorei(GL_PACK_ALIGNMENT, 1);
  glReadPixels(0, 0, width, height, GL_RGBA, GL_UNSIGNED_BYTE, picture.rgba.data());
  const std::ptrdiff_t row = 4 * static_cast<std::ptrdiff_t>(width);
  for (std::ptrdiff_t y = 0; y < height / 2; ++y) {
    std::swap_ranges(picture.rgba.begin() + y * row, picture.rgba.begin() + (y + 1) * row,
                     picture.rgba.begin() + (height - 1 - y) * row);
  }
  for (std::size_t i = 3; i < picture.rgba.size(); i += 4) {
    picture.rgba[i] = 255;
  }
  return picture;
}

namespace {

template <typename Draw>
tl::expected<Picture, std::string> drawn(const std::filesystem::path& assets_folder, int width, int height,
                                         Draw draw) {
  if (width < 16 || height < 16 || width > 8192 || height > 8192) {
    return tl::unexpected("picture size " + std::to_string(width) + "x" + std::to_string(height) +
                          "; write sides of 16 to 8192 pixels");
  }
  const auto context = OffscreenContext::create();
  if (!context) {
    return tl::unexpected(context.error());
  }
  auto view = BenchView::create(assets_folder);
  if (!view) {
    return tl::unexpected(view.error());
  }
  const Target target = Target::make(width, height, GL_RGBA8);
  target.bind();
  draw(*view, target);
  Picture picture = read_back(width, height);
  const GLenum wrong = glGetError();
  if (wrong != GL_NO_ERROR) {
    return tl::unexpected("OpenGL error " + std::to_string(wrong) + " while drawing");
  }
  return picture;
}

} // namespace

tl::expected<Picture, std::string> bench_picture(const std::filesystem::path& assets_folder,
                                                 const bench::Scene& scene, const Show& show, int width,
                                                 int height) {
  return drawn(assets_folder, width, height, [&](BenchView& view, const Target&) {
    const Rect area{0, 0, static_cast<float>(width), static_cast<float>(height)};
    view.draw(scene, show, layout(scene, show, area), height);
  });
}

tl::expected<Picture, std::string> tube_picture(const std::filesystem::path& assets_folder,
                                                const std::vector<appearance::Appearance>& side_by_side,
                                                int width, int height) {
  return drawn(assets_folder, width, height, [&](BenchView& view, const Target& target) {
    const unsigned texture = view.side_by_side(0, side_by_side, width, height);
    target.bind();
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, texture, 0);
  });
}

tl::expected<void, std::string> write_png(const Picture& picture, const std::filesystem::path& file) {
  if (stbi_write_png(file.string().c_str(), picture.width, picture.height, 4, picture.rgba.data(),
                     4 * picture.width) == 0) {
    return tl::unexpected("cannot write " + file.string() +
                          "; check that the folder exists and may be written to");
  }
  return {};
}

tl::expected<void, std::string> write_bench_picture(const std::filesystem::path& assets_folder,
                                                    const bench::Scene& scene, const Show& show,
                                                    const std::filesystem::path& file, int width,
                                                    int height) {
  const auto picture = bench_picture(assets_folder, scene, show, width, height);
  return picture ? write_png(*picture, file) : tl::unexpected(picture.error());
}

tl::expected<void, std::string> write_tube_picture(const std::filesystem::path& assets_folder,
                                                   const std::vector<appearance::Appearance>& side_by_side,
                                                   const std::filesystem::path& file, int width, int height) {
  const auto picture = tube_picture(assets_folder, side_by_side, width, height);
  return picture ? write_png(*picture, file) : tl::unexpected(picture.error());
}

} // namespace matula::render
