#include "engine/render/gl.hpp"

#include <cmath>
#include <vector>

namespace matula::render {

namespace {

tl::expected<GLuint, std::string> compile(GLenum kind, const std::string& name, const std::string& text) {
  const GLuint shader = glCreateShader(kind);
  const char* source = text.c_str();
  glShaderSource(shader, 1, &source, nullptr);
  glCompileShader(shader);
  GLint ok = 0;
  glGetShaderiv(shader, GL_COMPILE_STATUS, &ok);
  if (ok == GL_FALSE) {
    std::vector<char> log(8192);
    GLsizei length = 0;
    glGetShaderInfoLog(shader, static_cast<GLsizei>(log.size()), &length, log.data());
    glDeleteShader(shader);
    return tl::unexpected("shader " + name + " does not compile: " + std::string(log.data(), length));
  }
  return shader;
}

} // namespace

tl::expected<Program, std::string> Program::link(const std::string& name, const std::string& vertex,
                                                 const std::string& fragment) {
  const auto vs = compile(GL_VERTEX_SHADER, name + " (vertex)", vertex);
  if (!vs) {
    return tl::unexpected(vs.error());
  }
  const auto fs = compile(GL_FRAGMENT_SHADER, name, fragment);
  if (!fs) {
    glDeleteShader(*vs);
    return tl::unexpected(fs.error());
  }
  Program made;
  made.name_ = GlName<detail::drop_program>(glCreateProgram());
  glAttachShader(made.name_.get(), *vs);
  glAttachShader(made.name_.get(), *fs);
  glLinkProgram(made.name_.get());
  glDeleteShader(*vs);
  glDeleteShader(*fs);
  GLint ok = 0;
  glGetProgramiv(made.name_.get(), GL_LINK_STATUS, &ok);
  if (ok == GL_FALSE) {
    std::vector<char> log(8192);
    GLsizei length = 0;
    glGetProgramInfoLog(made.name_.get(), static_cast<GLsizei>(log.size()), &length, log.data());
    return tl::unexpected("shader " + name + " does not link: " + std::string(log.data(), length));
  }
  return made;
}

GLint Program::at(const char* uniform) {
  const auto [place, added] = places_.try_emplace(uniform, -1);
  if (added) {
    place->second = glGetUniformLocation(name_.get(), uniform);
  }
  return place->second;
}

TextureName make_texture(int width, int height, GLenum internal, GLenum format, GLenum type, const void* data,
                         bool mipmaps) {
  GLuint name = 0;
  glGenTextures(1, &name);
  glBindTexture(GL_TEXTURE_2D, name);
  glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
  glTexImage2D(GL_TEXTURE_2D, 0, static_cast<GLint>(internal), width, height, 0, format, type, data);
  const GLint near_filter = mipmaps ? GL_LINEAR : GL_NEAREST;
  const GLint far_filter = mipmaps ? GL_LINEAR_MIPMAP_LINEAR : GL_NEAREST;
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, far_filter);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, near_filter);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
  if (mipmaps) {
    glGenerateMipmap(GL_TEXTURE_2D);
  }
  return TextureName(name);
}

void bind_texture(int unit, GLuint texture) {
  glActiveTexture(GL_TEXTURE0 + static_cast<GLenum>(unit));
  glBindTexture(GL_TEXTURE_2D, texture);
}

Target Target::make(int width, int height, GLenum format) {
  Target made;
  made.width = width;
  made.height = height;
  const GLenum type = format == GL_RGBA8 ? GL_UNSIGNED_BYTE : GL_FLOAT;
  made.texture = make_texture(width, height, format, GL_RGBA, type, nullptr, false);
  GLuint name = 0;
  glGenFramebuffers(1, &name);
  made.framebuffer = FramebufferName(name);
  glBindFramebuffer(GL_FRAMEBUFFER, name);
  glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, made.texture.get(), 0);
  return made;
}

void Target::bind() const {
  glBindFramebuffer(GL_FRAMEBUFFER, framebuffer.get());
  glViewport(0, 0, width, height);
}

void Target::scissor(const Rect& r) const {
  const int left = static_cast<int>(std::floor(r.x));
  const int top = static_cast<int>(std::floor(r.y));
  const int right = static_cast<int>(std::ceil(r.x + r.w));
  const int bottom = static_cast<int>(std::ceil(r.y + r.h));
  glEnable(GL_SCISSOR_TEST);
  glScissor(left, height - bottom, right - left, bottom - top);
}

void Target::copy_from(const Target& other, const Rect& r) const {
  const int left = static_cast<int>(std::floor(r.x));
  const int right = static_cast<int>(std::ceil(r.x + r.w));
  const int bottom = height - static_cast<int>(std::ceil(r.y + r.h));
  const int top = height - static_cast<int>(std::floor(r.y));
  glDisable(GL_SCISSOR_TEST);
  glBindFramebuffer(GL_READ_FRAMEBUFFER, other.framebuffer.get());
  glBindFramebuffer(GL_DRAW_FRAMEBUFFER, framebuffer.get());
  glBlitFramebuffer(left, bottom, right, top, left, bottom, right, top, GL_COLOR_BUFFER_BIT, GL_NEAREST);
}

void draw_quad() {
  glDrawArrays(GL_TRIANGLE_STRIP, 0, 4);
}

} // namespace matula::render
