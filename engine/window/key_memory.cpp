#include "engine/window/key_memory.hpp"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>
#include <imgui.h>

#include <algorithm>

namespace matula::window {

void KeyMemory::attach(GLFWwindow* window) {
  glfwSetWindowUserPointer(window, this);
  glfwSetKeyCallback(window, on_key);
  glfwSetCharCallback(window, [](GLFWwindow* w, unsigned) { of(w).stir(); });
  glfwSetMouseButtonCallback(window, [](GLFWwindow* w, int, int, int) { of(w).stir(); });
  glfwSetCursorPosCallback(window, [](GLFWwindow* w, double, double) { of(w).stir(); });
  glfwSetScrollCallback(window, [](GLFWwindow* w, double, double) { of(w).stir(); });
}

KeyMemory& KeyMemory::of(GLFWwindow* window) {
  return *static_cast<KeyMemory*>(glfwGetWindowUserPointer(window));
}

void KeyMemory::on_key(GLFWwindow* window, int key, int /*scan*/, int action, int mods) {
  KeyMemory& memory = of(window);
  memory.stir();
  if (key < 0 || key >= keys || action == GLFW_REPEAT) {
    return;
  }
  memory.down_[static_cast<std::size_t>(key)] = action == GLFW_PRESS;
  if (action == GLFW_PRESS) {
    memory.tapped_.push_back(key);
    memory.tapped_with_ |= mods;
  }
}

bool KeyMemory::before_frame() {
  ImGuiIO& io = ImGui::GetIO();
  const auto is_down = [this](int key) { return down_[static_cast<std::size_t>(key)]; };
  for (const int key : held_) {
    io.KeysDown[key] = is_down(key);
  }
  held_.clear();
  const bool enter_tapped = std::find(tapped_.begin(), tapped_.end(), GLFW_KEY_ENTER) != tapped_.end();
  if (enter_tapped) {
    enter_presses_ = !io.WantTextInput;
  }
  for (const int key : tapped_) {
    if (!is_down(key)) {
      io.KeysDown[key] = true;
      held_.push_back(key);
    }
  }
  tapped_.clear();
  enter_presses_ = enter_presses_ && io.KeysDown[GLFW_KEY_ENTER];
  const bool space_tapped = std::find(held_.begin(), held_.end(), GLFW_KEY_SPACE) != held_.end();
  io.KeysDown[GLFW_KEY_SPACE] = is_down(GLFW_KEY_SPACE) || space_tapped || enter_presses_;
  // A chord that was tapped quickly keeps its modifier, though that was let go before this frame.
  const auto with = [this](int modifier) { return (tapped_with_ & modifier) != 0; };
  io.KeyCtrl =
      io.KeysDown[GLFW_KEY_LEFT_CONTROL] || io.KeysDown[GLFW_KEY_RIGHT_CONTROL] || with(GLFW_MOD_CONTROL);
  io.KeyShift = io.KeysDown[GLFW_KEY_LEFT_SHIFT] || io.KeysDown[GLFW_KEY_RIGHT_SHIFT] || with(GLFW_MOD_SHIFT);
  tapped_with_ = 0;
  const bool more = stirred_ || !held_.empty();
  stirred_ = false;
  return more;
}

} // namespace matula::window
