#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"
#include "engine/window/practice_view.hpp"

#include <fmt/format.h>
#include <imgui.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

namespace matula::window {

namespace {

/// The number key pressed, from 0; -1 for none.
int number_key(int most) {
  if (ImGui::GetIO().WantTextInput) {
    return -1;
  }
  for (int i = 0; i < std::min(most, 9); ++i) {
    if (ImGui::IsKeyPressed(GLFW_KEY_1 + i, false) || ImGui::IsKeyPressed(GLFW_KEY_KP_1 + i, false)) {
      return i;
    }
  }
  return -1;
}

/// Numbered words of which one is chosen, by mouse or key; true when one just was.
bool draw_numbered(App& app, const char* name, const std::vector<std::string>& words,
                   const std::vector<std::string>& below, int& chosen, bool keys) {
  int now = keys ? number_key(static_cast<int>(words.size())) : -1;
  for (int i = 0; i < static_cast<int>(words.size()); ++i) {
    const auto at = static_cast<std::size_t>(i);
    if (app.widgets.choice(fmt::format("{}.{}", name, i + 1).c_str(),
                           fmt::format("{}   {}", i + 1, words[at]), chosen == i)) {
      now = i;
    }
    if (at < below.size()) {
      ImGui::Indent(ImGui::GetFrameHeight() + ImGui::GetFontSize());
      ImGui::PushTextWrapPos(0);
      ImGui::TextDisabled("%s", below[at].c_str());
      ImGui::PopTextWrapPos();
      ImGui::Unindent(ImGui::GetFrameHeight() + ImGui::GetFontSize());
    }
  }
  if (now >= 0) {
    chosen = now;
  }
  return now >= 0;
}

/// In a quiz an answer is chosen first and then written down; in practice it is written at once.
void settle(App& app, bool chosen_now, bool whole) {
  PracticeView& view = *app.practice;
  if (view.drill) {
    if (chosen_now && whole) {
      write_reply(app);
    }
    return;
  }
  ImGui::Spacing();
  if (chosen_now && whole) {
    view.focus_next = 3;
  }
  if (view.focus_next > 0 && whole) {
    --view.focus_next;
    app.widgets.focus_next();
  }
  if (app.widgets.button("answer", "Write it down (Enter)", whole)) {
    view.focus_next = 0;
    write_reply(app);
  }
}

void draw_tube_answers(App& app, const desk::Question& question) {
  int& word = app.practice->reply.word;
  const bool now = draw_numbered(app, "word", question.words, question.table, word, true);
  settle(app, now, word >= 0);
}

void draw_delivery_answers(App& app, const desk::Question& question) {
  Reply& reply = app.practice->reply;
  const auto labels = [](const std::vector<reception::WrittenLine>& list) {
    std::vector<std::string> words;
    for (const auto& [key, wording] : list) {
      words.push_back(wording);
    }
    return words;
  };
  const bool judged = reply.verdict >= 0;
  (void)draw_numbered(app, "verdict", labels(question.verdicts), {}, reply.verdict, !judged);
  if (!judged) {
    ImGui::TextWrapped("First the verdict, then the reason that weighs most.");
    return;
  }
  heading("Why?");
  const bool now = draw_numbered(app, "reason", labels(question.reasons), {}, reply.reason, true);
  settle(app, now, reply.reason >= 0);
}

/// A field; true when Enter was pressed in it.
bool draw_field(App& app, const std::string& name, std::string& text, const std::string& words, bool focus) {
  if (focus) {
    ImGui::SetKeyboardFocusHere();
  }
  (void)app.widgets.line(name.c_str(), text, number_width() * 1.2F);
  const bool entered = ImGui::IsItemDeactivated() &&
                       (ImGui::IsKeyPressed(GLFW_KEY_ENTER) || ImGui::IsKeyPressed(GLFW_KEY_KP_ENTER));
  ImGui::SameLine();
  ImGui::TextWrapped("%s", words.c_str());
  return entered;
}

void draw_sum_answers(App& app, const desk::Question& question) {
  PracticeView& view = *app.practice;
  const int focus = std::exchange(view.focus_line, -1);
  const int count = static_cast<int>(question.lines.size());
  bool last = false;
  for (int i = 0; i < count; ++i) {
    const auto at = static_cast<std::size_t>(i);
    if (draw_field(app, fmt::format("line.{}", i + 1), view.reply.lines[at], question.lines[at],
                   focus == i)) {
      view.focus_line = i + 1 < count ? i + 1 : -1;
      last = i + 1 == count;
    }
  }
  ImGui::TextWrapped("Enter goes on to the next line. Write a line also where there is nothing to correct.");
  if (last) {
    view.focus_next = 3;
  }
  if (view.focus_next > 0) {
    --view.focus_next;
    app.widgets.focus_next();
  }
  if (app.widgets.button("answer", "Hand it in")) {
    view.focus_next = 0;
    write_reply(app);
  }
}

void draw_float_answer(App& app) {
  PracticeView& view = *app.practice;
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 9);
  (void)app.widgets.slider("eye", "eye above the surface", view.eye_mm, -40, 40);
  ImGui::TextWrapped("F2 lowers and F3 raises the eye by a millimetre, also while you write.");
  const bool focus = std::exchange(view.focus_line, -1) == 0;
  const bool entered = draw_field(app, "number", view.reply.number, "reading, such as 1.018", focus);
  const bool pressed = app.widgets.button("answer", "Write it down (Enter)", !view.reply.number.empty());
  if ((entered || pressed) && !view.reply.number.empty()) {
    write_reply(app);
  }
}

} // namespace

void draw_question(App& app, const desk::Question& question) {
  ImGui::TextWrapped("%s", question.prompt.c_str());
  ImGui::Spacing();
  switch (question.kind) {
  case desk::Posed::Tube:
    draw_tube_answers(app, question);
    break;
  case desk::Posed::Float:
    draw_float_answer(app);
    break;
  case desk::Posed::Sum:
    draw_sum_answers(app, question);
    break;
  case desk::Posed::Delivery:
    draw_delivery_answers(app, question);
    break;
  }
}

} // namespace matula::window
