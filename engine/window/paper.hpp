#pragma once

#include <imgui.h>

namespace matula::window {

/// A sheet of paper on the counter: what is drawn while it lives stands in dark ink on a light ground.
class Paper {
public:
  /// `width` of the sheet; its height is what it holds.
  Paper(const char* title, float width);
  ~Paper();
  Paper(const Paper&) = delete;
  Paper& operator=(const Paper&) = delete;

  /// "name   value", the value in lines of its own column; `blank` stands where nothing is written.
  void line(const char* name, const char* value, const char* blank) const;
  /// Words over the whole width.
  void words(const char* text) const;

private:
  ImDrawListSplitter layers_;
  ImVec2 corner_;
  float width_;
  float margin_;
};

} // namespace matula::window
