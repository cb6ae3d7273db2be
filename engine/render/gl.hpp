#pragma once

#include "engine/render/rect.hpp"

#include <glad/gl.h>
#include <tl/expected.hpp>

#include <array>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>

namespace matula::render {

/// Owns one OpenGL name and gives it back.
template <auto Destroy> class GlName {
public:
  GlName() = default;
  explicit GlName(GLuint name) : name_(name) {}
  ~GlName() { reset(); }
  GlName(GlName&& other) noexcept : name_(std::exchange(other.name_, 0)) {}
  GlName& operator=(GlName&& other) noexcept {
    if (this != &other) {
      reset();
      name_ = std::exchange(other.name_, 0);
    }
    return *this;
  }
  GlName(const GlName&) = delete;
  GlName& operator=(const GlName&) = delete;
  [[nodiscard]] GLuint get() const { return name_; }
  void reset() {
    if (name_ != 0) {
      Destroy(name_);
      name_ = 0;
    }
  }

private:
  GLuint name_ = 0;
};

namespace detail {
inline void drop_texture(GLuint name) {
  glDeleteTextures(1, &name);
}
inline void drop_framebuffer(GLuint name) {
  glDeleteFramebuffers(1, &name);
}
inline void drop_buffer(GLuint name) {
  glDeleteBuffers(1, &name);
}
inline void drop_array(GLuint name) {
  glDeleteVertexArrays(1, &name);
}
inline void drop_program(GLuint name) {
  glDeleteProgram(name);
}
} // namespace detail

using TextureName = GlName<detail::drop_texture>;
using FramebufferName = GlName<detail::drop_framebuffer>;
using BufferName = GlName<detail::drop_buffer>;
using ArrayName = GlName<detail::drop_array>;

/// A linked program with its uniforms by name; setting one the driver dropped is harmless.
class Program {
public:
  /// `name` stands in front of the driver's message.
  [[nodiscard]] static tl::expected<Program, std::string>
  link(const std::string& name, const std::string& vertex, const std::string& fragment);
  void use() const { glUseProgram(name_.get()); }
  void set(const char* uniform, float v) { glUniform1f(at(uniform), v); }
  void set(const char* uniform, int v) { glUniform1i(at(uniform), v); }
  void set(const char* uniform, float x, float y) { glUniform2f(at(uniform), x, y); }
  void set(const char* uniform, const std::array<float, 3>& v) { glUniform3f(at(uniform), v[0], v[1], v[2]); }
  void set(const char* uniform, const std::array<float, 4>& v) {
    glUniform4f(at(uniform), v[0], v[1], v[2], v[3]);
  }
  void set(const char* uniform, const Rect& r) { glUniform4f(at(uniform), r.x, r.y, r.w, r.h); }

private:
  [[nodiscard]] GLint at(const char* uniform);
  GlName<detail::drop_program> name_;
  std::unordered_map<std::string, GLint> places_;
};

/// A texture to draw into, kept top row last as OpenGL does; rectangles are given y down and turned over
/// here.
struct Target {
  int width = 0;
  int height = 0;
  TextureName texture;
  FramebufferName framebuffer;

  /// `format` is GL_RGBA32F for light, GL_RGBA8 for the finished picture.
  [[nodiscard]] static Target make(int width, int height, GLenum format);
  void bind() const;
  /// Limits drawing to `r`; needs the target bound.
  void scissor(const Rect& r) const;
  /// Copies the part `r` from another target of the same size and format.
  void copy_from(const Target& other, const Rect& r) const;
};

[[nodiscard]] TextureName make_texture(int width, int height, GLenum internal, GLenum format, GLenum type,
                                       const void* data, bool mipmaps);
void bind_texture(int unit, GLuint texture);

/// Draws the rectangle in `u_rect` with the program in use (no vertex data: corners come from gl_VertexID).
void draw_quad();

} // namespace matula::render
