#pragma once

#include <tl/expected.hpp>

#include <memory>
#include <string>

namespace matula::render {

/// An OpenGL 3.3 context without window or X server (EGL, surfaceless), current on this thread for its life.
class OffscreenContext {
public:
  /// The error says what the driver lacks and which Debian package brings it.
  [[nodiscard]] static tl::expected<OffscreenContext, std::string> create();
  ~OffscreenContext();
  OffscreenContext(OffscreenContext&&) noexcept;
  OffscreenContext& operator=(OffscreenContext&&) noexcept;

private:
  struct Impl;
  explicit OffscreenContext(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

} // namespace matula::render
