#pragma once

#include "engine/render/gl.hpp"

#include <filesystem>
#include <string>

namespace matula::render {

/// Links assets/shaders/`vertex` with `fragment`; each is preceded by `defines` and common.glsl.
[[nodiscard]] tl::expected<Program, std::string> load_program(const std::filesystem::path& assets_folder,
                                                              const std::string& vertex,
                                                              const std::string& fragment,
                                                              const std::string& defines = "");

} // namespace matula::render
