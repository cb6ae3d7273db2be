#pragma once

#include "engine/render/layout.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace matula::render {

/// Loads OpenGL's functions for the current context (`glfwGetProcAddress` in a window). False without
/// OpenGL 3.3.
[[nodiscard]] bool load_gl(void* (*find)(const char* name));

/// Draws everything that is glass, liquid, wood, paper, metal or flame; panels and their words belong to the
/// window. Keeps what it drew and redraws only what has changed since. Needs a current OpenGL 3.3 context all
/// its life.
class BenchView {
public:
  /// Reads shaders from `assets_folder`/shaders. The error says which file and what the driver answered.
  [[nodiscard]] static tl::expected<BenchView, std::string>
  create(const std::filesystem::path& assets_folder);
  ~BenchView();
  BenchView(BenchView&&) noexcept;
  BenchView& operator=(BenchView&&) noexcept;

  /// Draws into `where.area` of the framebuffer bound now, which is `target_height` pixels high. Changes
  /// viewport, program, bound textures and blending; leaves the same framebuffer bound, with scissor and
  /// blending off.
  void draw(const bench::Scene& scene, const Show& show, const SceneLayout& where, int target_height);

  /// Draws vessels side by side, each large against its own card, into a texture kept until the next call
  /// with the same `slot`. For ImGui::Image: uv0 = (0, 1), uv1 = (1, 0). Returns the OpenGL texture name.
  [[nodiscard]] unsigned side_by_side(int slot, const std::vector<appearance::Appearance>& vessels, int width,
                                      int height);

  /// The same for a jar with the float that swims in it, so near that its scale can be read at the surface.
  [[nodiscard]] unsigned float_in_jar(int slot, const appearance::Appearance& jar,
                                      const bench::SeenFloat& floating, int width, int height);

private:
  struct Impl;
  explicit BenchView(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

/// Whether anything in the scene moves by itself (flame, boiling, steam, a bobbing float), so that frames
/// must follow.
[[nodiscard]] bool moves(const bench::Scene& scene);

} // namespace matula::render
