// Two pages of the form with what the program makes of them: the counter, and the marks.
#include "engine/window/author_view.hpp"
#include "engine/window/group.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace matula::window {

namespace {

using drafting::Studio;

void strong(const std::string& words) {
  ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_CheckMark));
  ImGui::TextWrapped("%s", words.c_str());
  ImGui::PopStyleColor();
}

void say_age(bool fresh) {
  if (!fresh) {
    ImGui::TextDisabled("of the case as it last read well");
  }
}

void draw_answer(const drafting::Form& form) {
  heading("What the counter expects");
  if (!form.answer) {
    ImGui::TextWrapped("It is worked out as soon as the case reads well.");
    return;
  }
  const drafting::Answer& answer = *form.answer;
  strong(answer.words);
  say_age(form.answer_fresh);
  if (answer.because.empty()) {
    ImGui::TextWrapped("Form, label and container are in order.");
  }
  for (const auto& words : answer.because) {
    point(words);
  }
  for (const auto& words : answer.notes) {
    point("No fault, to be borne in mind: " + words);
  }
  if (!answer.day.empty()) {
    ImGui::TextWrapped("The sums of the day. %s.", fmt::format("{}", fmt::join(answer.day, "; ")).c_str());
  }
}

void draw_worth(const drafting::Seen& seen) {
  heading("What there is to earn");
  int all = 0;
  for (const auto& ledger : seen.worth) {
    all += ledger.marks;
    if (ledger.marks > 0) {
      point(fmt::format("{}: {} marks. {}.", ledger.ledger, ledger.marks, fmt::join(ledger.parts, "; ")));
    }
  }
  strong(fmt::format("{} marks in all, and safety by its occasions", all));
  say_age(seen.figures_fresh);
}

} // namespace

void draw_author_counter(App& app) {
  AuthorView& view = *app.author;
  const drafting::Form& form = view.studio->form();
  if (form.groups.empty()) {
    draw_author_rows(app, "counter");
    return;
  }
  if (!form.counter) {
    heading("No counter");
    ImGui::TextWrapped(
        "The student begins at the bench. With a counter he is first asked whether the specimen is "
        "to be accepted, and what is wrong with it.");
    if (app.widgets.button("add.counter", "Let it come over the counter")) {
      view.focus_page = 3;
      view.wanted = [](Studio& studio) { return studio.add_counter(); };
    }
    return;
  }
  if (app.widgets.button("remove.counter", "No counter: take it out")) {
    view.focus_page = 3;
    view.wanted = [](Studio& studio) { return studio.remove("collection"); };
  }
  draw_answer(form);
  draw_author_rows(app, "counter");
  heading("The form asks for");
  draw_author_ticks(app, "request.", form.requests, &Studio::ask_at_counter);
  draw_author_rows(app, "voids");
  if (app.widgets.button("add.void", "One more void")) {
    view.wanted = [](Studio& studio) { return studio.add_void(); };
  }
}

void draw_author_marks(App& app) {
  const Studio& studio = *app.author->studio;
  const drafting::Form& form = studio.form();
  draw_author_rows(app, "weights");
  if (form.groups.empty()) {
    return;
  }
  for (const auto& words : form.weights) {
    strong(words);
  }
  draw_worth(studio.seen());
  draw_author_rows(app, "tolerances");
  draw_author_rows(app, "marking");
}

} // namespace matula::window
