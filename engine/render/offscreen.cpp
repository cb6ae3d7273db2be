#include "engine/render/offscreen.hpp"

#include "engine/render/bench_view.hpp"

#include <glad/gl.h>

#include <EGL/egl.h>
#include <EGL/eglext.h>

#include <array>

namespace matula::render {

struct OffscreenContext::Impl {
  EGLDisplay display = EGL_NO_DISPLAY;
  EGLContext context = EGL_NO_CONTEXT;

  ~Impl() {
    if (context != EGL_NO_CONTEXT) {
      eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
      eglDestroyContext(display, context);
    }
    if (display != EGL_NO_DISPLAY) {
      eglTerminate(display);
    }
  }
};

namespace {

constexpr const char* hint = "; install libegl1, libegl-mesa0 and libgl1-mesa-dri";

EGLDisplay surfaceless_display() {
  const auto get_display =
      reinterpret_cast<PFNEGLGETPLATFORMDISPLAYEXTPROC>(eglGetProcAddress("eglGetPlatformDisplayEXT"));
  return get_display == nullptr ? EGL_NO_DISPLAY
                                : get_display(EGL_PLATFORM_SURFACELESS_MESA, EGL_DEFAULT_DISPLAY, nullptr);
}

void* find_gl(const char* name) {
  return reinterpret_cast<void*>(eglGetProcAddress(name));
}

} // namespace

tl::expected<OffscreenContext, std::string> OffscreenContext::create() {
  auto impl = std::make_unique<Impl>();
  impl->display = surfaceless_display();
  if (impl->display == EGL_NO_DISPLAY || eglInitialize(impl->display, nullptr, nullptr) == EGL_FALSE) {
    impl->display = EGL_NO_DISPLAY;
    return tl::unexpected(std::string("no surfaceless EGL display") + hint);
  }
  eglBindAPI(EGL_OPENGL_API);
  const std::array<EGLint, 5> wanted{EGL_RENDERABLE_TYPE, EGL_OPENGL_BIT, EGL_SURFACE_TYPE, 0, EGL_NONE};
  EGLConfig config = nullptr;
  EGLint found = 0;
  if (eglChooseConfig(impl->display, wanted.data(), &config, 1, &found) == EGL_FALSE || found == 0) {
    return tl::unexpected(std::string("EGL offers no OpenGL configuration") + hint);
  }
  const std::array<EGLint, 7> version{EGL_CONTEXT_MAJOR_VERSION,
                                      3,
                                      EGL_CONTEXT_MINOR_VERSION,
                                      3,
                                      EGL_CONTEXT_OPENGL_PROFILE_MASK,
                                      EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT,
                                      EGL_NONE};
  impl->context = eglCreateContext(impl->display, config, EGL_NO_CONTEXT, version.data());
  if (impl->context == EGL_NO_CONTEXT ||
      eglMakeCurrent(impl->display, EGL_NO_SURFACE, EGL_NO_SURFACE, impl->context) == EGL_FALSE) {
    return tl::unexpected(std::string("EGL gives no OpenGL 3.3 core context") + hint);
  }
  if (!load_gl(find_gl)) {
    return tl::unexpected(std::string("the driver lacks OpenGL 3.3 functions") + hint);
  }
  return OffscreenContext(std::move(impl));
}

OffscreenContext::OffscreenContext(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
OffscreenContext::~OffscreenContext() = default;
OffscreenContext::OffscreenContext(OffscreenContext&&) noexcept = default;
OffscreenContext& OffscreenContext::operator=(OffscreenContext&&) noexcept = default;

} // namespace matula::render
