#include "engine/window/entries.hpp"

#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"

#include <fmt/format.h>

#include <cstdlib>

namespace matula::window {

namespace {

bool is_number(const std::string& text) {
  char* end = nullptr;
  std::strtod(text.c_str(), &end);
  return end != text.c_str() && *end == '\0';
}

} // namespace

bool is_examination(const App& app) {
  return app.desk->examination() || app.desk->brief().level == "exam";
}

std::string written(const App& app, const std::string& item) {
  const auto found = app.desk->worksheet().find(item);
  return found == app.desk->worksheet().end() ? "" : found->second;
}

void draw_answers(App& app, const std::string& item,
                  const std::vector<std::pair<std::string, std::string>>& answers, const std::string& line) {
  const std::string now = written(app, item);
  bool first = true;
  for (const auto& [key, wording] : answers) {
    if (!first) {
      flow(width_of(wording.c_str()) + ImGui::GetFrameHeight());
    }
    first = false;
    if (app.widgets.choice(fmt::format("{}={}", item, key).c_str(), wording, now == key)) {
      app.record(item, key, line + wording);
    }
  }
}

void draw_number_line(App& app, const std::string& item, const std::string& words,
                      const std::string& example) {
  std::string& draft = app.drafts.try_emplace(item, written(app, item)).first->second;
  if (app.widgets.line(item.c_str(), draft, number_width() * 1.2F)) {
    if (draft.empty() || is_number(draft)) {
      app.record(item, draft, words + ": " + (draft.empty() ? "nothing" : draft));
    } else {
      app.say("\"" + draft + "\" is not a number; write one such as " + example + ".", true);
    }
  }
  ImGui::SameLine();
  ImGui::TextUnformatted(words.c_str());
  const std::string now = written(app, item);
  if (!now.empty()) {
    flow(width_of(("(written: " + now + ")").c_str()));
    ImGui::TextDisabled("(written: %s)", now.c_str());
  }
}

} // namespace matula::window
