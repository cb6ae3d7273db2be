#pragma once

#include <map>
#include <string>
#include <vector>

namespace matula::window {

/// Thin layer over ImGui: every control has a name by which a test (or an assistive tool) can find where it
/// is. Names are stable; labels are for people.
class Widgets {
public:
  void begin_frame();
  /// The next control drawn gets the keyboard.
  void focus_next() { focus_next_ = true; }

  bool button(const char* name, const std::string& label, bool enabled = true);
  bool section(const char* name, const std::string& label); ///< A heading that opens; true while it is open.
  bool choice(const char* name, const std::string& label, bool chosen); ///< Radio button.
  bool tick(const char* name, const std::string& label, bool& value);   ///< Check box.
  /// A line of text; true when the learner is done with it (Enter, or moved on) and it has changed.
  bool line(const char* name, std::string& text, float width);
  /// Several lines of text over the whole width; as above, but Enter begins a new line and Ctrl+Enter ends.
  bool lines(const char* name, std::string& text, float height);
  bool number(const char* name, double& value, double least, double most, float width, const char* format);
  bool slider(const char* name, const std::string& label, float& value, float least,
              float most); ///< True on release.
  bool pick(const char* name, const std::string& label, const std::vector<std::string>& options, int& chosen);

  /// Notes the control drawn last under `name`.
  void note(const char* name);
  void note_at(const std::string& name, float x, float y) { places_[name] = {x, y}; }

  /// Something a test may wait for: "=name value" in the map.
  void tell(const std::string& name, const std::string& value) { facts_[name] = value; }

  /// "name x y" a line: the middle of each control that shows in this frame; "-name x y" where one lies that
  /// has to be scrolled to; then the facts, and "=focus name" for the control that has the keyboard.
  [[nodiscard]] std::string map() const;

private:
  struct Place {
    float x = 0;
    float y = 0;
  };
  std::map<std::string, Place> places_;
  std::map<std::string, Place> out_of_sight_;
  std::map<std::string, std::string> facts_;
  bool focus_next_ = false;
  unsigned long frame_ = 0;
};

} // namespace matula::window
