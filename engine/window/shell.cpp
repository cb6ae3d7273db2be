#include "engine/window/author.hpp"
#include "engine/window/class_view.hpp"
#include "engine/window/exam_view.hpp"
#include "engine/window/fonts.hpp"
#include "engine/window/key_memory.hpp"
#include "engine/window/panels.hpp"
#include "engine/window/practice_view.hpp"
#include "sim/optics/colour.hpp"
#include "sim/reading/hue_name.hpp"

// glad's declarations must come before any other header that brings OpenGL's.
#include <glad/gl.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>
#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <imgui.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <fstream>
#include <ostream>

namespace matula::window {

namespace {

constexpr int settle_frames = 4;        // ImGui needs a few frames after an event to come to rest.
constexpr double frame_s = 1.0 / 30.0;  // While something moves.
constexpr double running_frame_s = 0.5; // While bench time runs but nothing moves by itself.

struct Glfw {
  Glfw() : ready(glfwInit() == GLFW_TRUE) {}
  ~Glfw() {
    if (ready) {
      glfwTerminate();
    }
  }
  Glfw(const Glfw&) = delete;
  Glfw& operator=(const Glfw&) = delete;
  bool ready;
};

struct Gui {
  explicit Gui(GLFWwindow* window) {
    ImGui::CreateContext();
    ImGui::GetIO().IniFilename = nullptr;
    ImGui::GetIO().ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
    keys.attach(window);
    ImGui_ImplGlfw_InitForOpenGL(window, true);
    ImGui_ImplOpenGL3_Init("#version 330");
  }
  ~Gui() {
    ImGui_ImplOpenGL3_Shutdown();
    ImGui_ImplGlfw_Shutdown();
    ImGui::DestroyContext();
  }
  Gui(const Gui&) = delete;
  Gui& operator=(const Gui&) = delete;
  KeyMemory keys;
};

GLFWwindow* open_window() {
  glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
  glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
  glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
  return glfwCreateWindow(1280, 800, "Matula", nullptr, nullptr);
}

/// How long the window may sleep before the next frame: negative means until an event comes.
double rest_s(const App& app) {
  if (at_author(app)) {
    return author_rest_s(app);
  }
  if (at_class(app)) {
    return class_rest_s(app);
  }
  if (at_practice(app)) {
    return practice_rest_s(app);
  }
  if (!app.desk || app.desk->finished()) {
    return exam_rest_s(app);
  }
  const bool moves = app.scene && render::moves(*app.scene) &&
                     (!app.aids.still || app.something_heats() || app.scene->floating);
  const bool lively = app.clock.waiting() || moves;
  return lively ? frame_s : app.clock.running() ? running_frame_s : exam_rest_s(app);
}

void advance_clock(App& app, double wall_s) {
  run_practice(app, wall_s);
  run_class(app, wall_s);
  if (!app.desk || app.desk->finished()) {
    return;
  }
  app.wall_s += wall_s;
  // A tube in a flame, or a float that bobs, does not wait for the learner.
  const bool driven =
      app.something_heats() || (app.scene && app.scene->floating && render::moves(*app.scene));
  const double now = app.desk->time_s();
  const double then = driven && !app.clock.waiting() && !app.clock.running() ? now + std::min(wall_s, 0.1)
                                                                             : app.clock.next(now, wall_s);
  if (then > now) {
    app.boil_s += wall_s;
    app.desk->run_to(then);
  }
}

void write_map(const App& app) {
  const char* file = std::getenv("MATULA_WIDGET_MAP");
  if (file == nullptr) {
    return;
  }
  const std::string half = std::string(file) + ".part";
  {
    std::ofstream out(half);
    out << app.widgets.map();
  }
  std::error_code ignored; // The next frame writes it again.
  std::filesystem::rename(half, file, ignored);
}

/// Colour of the picture under the pointer, the mean of a few pixels, in words.
std::string hue_under_pointer(int height) {
  constexpr int side = 5;
  const ImVec2 at = ImGui::GetMousePos();
  if (!ImGui::IsMousePosValid(&at) || at.x < side || at.y < side) {
    return "";
  }
  std::array<unsigned char, std::size_t{side} * side * 4> pixels{};
  glReadPixels(static_cast<int>(at.x) - side / 2, height - static_cast<int>(at.y) - side / 2, side, side,
               GL_RGBA, GL_UNSIGNED_BYTE, pixels.data());
  optics::LinearRgb mean;
  constexpr double share = 1.0 / (side * side);
  constexpr double full = 255;
  for (std::size_t i = 0; i < pixels.size(); i += 4) {
    mean.r += share * optics::decode_srgb(pixels[i] / full);
    mean.g += share * optics::decode_srgb(pixels[i + 1] / full);
    mean.b += share * optics::decode_srgb(pixels[i + 2] / full);
  }
  return reading::hue_name(optics::to_lab(optics::from_linear_rgb(mean), optics::d65_white));
}

/// A bench in its place, below the panels that are drawn over it.
void draw_scene(App& app, const bench::Scene& scene, const render::Show& show, int width, int height) {
  const Regions where = regions(static_cast<float>(width), static_cast<float>(height), app.aids.text_scale);
  app.view.draw(scene, show, render::layout(scene, show, where.bench), height);
  glViewport(0, 0, width, height);
}

void draw(App& app, GLFWwindow* window) {
  int width = 0;
  int height = 0;
  glfwGetFramebufferSize(window, &width, &height);
  ImGui_ImplOpenGL3_NewFrame();
  ImGui_ImplGlfw_NewFrame();
  ImGui::NewFrame();
  draw_frame(app, static_cast<float>(width), static_cast<float>(height));
  ImGui::Render();
  glViewport(0, 0, width, height);
  glClearColor(0.10F, 0.10F, 0.11F, 1);
  glClear(GL_COLOR_BUFFER_BIT);
  if (app.desk && !app.desk->finished() && app.scene) {
    draw_scene(app, *app.scene, show_of(app), width, height);
  }
  if (const bench::Scene* scene = replay_scene(app)) {
    draw_scene(app, *scene, replay_show(app), width, height);
  } else if (const bench::Scene* unknown = practice_scene(app)) {
    draw_scene(app, *unknown, practice_show(app), width, height);
  }
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
  app.pointer_hue = app.aids.hues ? hue_under_pointer(height) : "";
  glfwSwapBuffers(window);
}

void rescale(App& app, float& drawn_scale) {
  if (app.aids.text_scale != drawn_scale) {
    ImGui_ImplOpenGL3_DestroyFontsTexture();
    const std::string problem = set_text_scale(app.aids.text_scale);
    if (!problem.empty()) {
      app.say(problem, true);
    }
    ImGui_ImplOpenGL3_CreateFontsTexture();
    drawn_scale = app.aids.text_scale;
  }
}

void loop(App& app, GLFWwindow* window, KeyMemory& keys) {
  float drawn_scale = app.aids.text_scale;
  int frames_due = settle_frames;
  double last = glfwGetTime();
  while (glfwWindowShouldClose(window) == GLFW_FALSE) {
    const double rest = rest_s(app);
    if (frames_due > 0) {
      glfwPollEvents();
      --frames_due;
    } else if (rest < 0) {
      glfwWaitEvents();
      frames_due = settle_frames;
      last = glfwGetTime(); // Sleep is not bench time.
    } else {
      const double before = glfwGetTime();
      glfwWaitEventsTimeout(std::max(rest - (before - last), 0.0));
    }
    const double now = glfwGetTime();
    advance_clock(app, now - last);
    last = now;
    rescale(app, drawn_scale);
    if (keys.before_frame()) {
      frames_due = settle_frames;
    }
    draw(app, window);
    if (app.aids.text_scale != drawn_scale) {
      frames_due = settle_frames;
    }
    app.widgets.tell("events", std::to_string(keys.events()));
    app.widgets.tell("settled", frames_due > 0 ? "0" : "1"); // Every event so far has had its effect.
    write_map(app);
  }
  if (app.desk) {
    app.desk->note_time();
  }
}

} // namespace

int run(const desk::Ground& ground, const Options& options, std::ostream& err) {
  const Glfw glfw;
  GLFWwindow* window = glfw.ready ? open_window() : nullptr;
  if (window == nullptr) {
    err << "The bench cannot be opened: no display, or no OpenGL 3.3 on it. Every verb of matula --help "
           "works without one.\n";
    return 1;
  }
  glfwMakeContextCurrent(window);
  const auto find = [](const char* name) { return reinterpret_cast<void*>(glfwGetProcAddress(name)); };
  if (!render::load_gl(find)) {
    err << "The bench cannot be drawn: the display offers no OpenGL 3.3.\n";
    return 1;
  }
  Gui gui(window);
  auto view = render::BenchView::create(ground.assets_folder());
  auto help = load_help(ground.assets_folder());
  auto sheets = reception::load_instructions(ground.assets_folder());
  const std::string font_problem =
      set_text_scale(load_aids(options.sittings, {options.text_scale, false, false}).text_scale);
  if (!view || !help || !sheets || !font_problem.empty()) {
    err << (!view     ? view.error()
            : !help   ? scenario::to_text(help.error())
            : !sheets ? scenario::to_text(sheets.error())
                      : font_problem)
        << '\n';
    return 1;
  }
  App app(ground, options, std::move(*view));
  app.help = std::move(*help);
  app.sheets = std::move(*sheets);
  find_cases(app);
  if (!options.open_scenario.empty()) {
    app.open(options.open_scenario);
  }
  loop(app, window, gui.keys);
  return 0;
}

} // namespace matula::window
