#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"

namespace matula::window {

namespace {
const ImVec4 refusal_colour{1.0F, 0.75F, 0.55F, 1.0F};
const ImVec4 caution_colour{1.0F, 0.9F, 0.5F, 1.0F};
} // namespace

void draw_message(App& app, const render::Rect& area) {
  const Pane pane("message", area);
  if (!app.message.empty()) {
    // A refusal is told by its words as well as by its colour.
    const std::string words = (app.message_is_refusal ? "Not done: " : "") + app.message;
    ImGui::PushTextWrapPos(0);
    if (app.message_is_refusal) {
      ImGui::TextColored(refusal_colour, "%s", words.c_str());
    } else {
      ImGui::TextUnformatted(words.c_str());
    }
    ImGui::PopTextWrapPos();
  }
  const std::string& caution = app.ground.caution(app.caution);
  if (!caution.empty()) {
    ImGui::PushTextWrapPos(0);
    ImGui::TextColored(caution_colour, "Caution: %s Your laboratory's own rules come first.",
                       caution.c_str());
    ImGui::PopTextWrapPos();
  }
}

} // namespace matula::window
