#pragma once

#include <array>
#include <vector>

struct GLFWwindow;

namespace matula::window {

/// Sees every event before ImGui does. Keeps a key that went down and up between two frames, so that a quick
/// tap is never lost on a slow machine; lets Enter press a control as Space does; asks for more frames after
/// any event.
class KeyMemory {
public:
  /// Install before ImGui's backend, which calls on to it.
  void attach(GLFWwindow* window);
  /// After events, before the frame. True when further frames must follow at once.
  bool before_frame();
  /// How many events have come since the window opened.
  [[nodiscard]] unsigned long events() const { return events_; }

private:
  static KeyMemory& of(GLFWwindow* window);
  static void on_key(GLFWwindow* window, int key, int scan, int action, int mods);

  void stir() {
    stirred_ = true;
    ++events_;
  }

  static constexpr int keys = 512;
  std::array<bool, keys> down_{};
  std::vector<int> tapped_; ///< Went down since the last frame,
  int tapped_with_ = 0;     ///< with these modifiers, which may be up again already.
  std::vector<int> held_;   ///< Shown as down for one frame though already up.
  bool stirred_ = false;    ///< Some event came since the last frame.
  unsigned long events_ = 0;
  bool enter_presses_ = false; ///< Enter went down while no text was being typed.
};

} // namespace matula::window
