// The form beside the live bench: its strip, its pages and its keys.
#include "engine/window/author_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace matula::window {

namespace {

constexpr double while_working_s = 0.1;

struct PageRow {
  AuthorPage page;
  const char* name;
  const char* label;
  int key;
};

// Every page of the form, in the order shown.
constexpr PageRow pages[] = {{AuthorPage::Specimen, "page.specimen", "Specimen", GLFW_KEY_S},
                             {AuthorPage::Way, "page.way", "Way", GLFW_KEY_Y},
                             {AuthorPage::Request, "page.request", "Request", GLFW_KEY_Q},
                             {AuthorPage::Counter, "page.counter", "Counter", GLFW_KEY_C},
                             {AuthorPage::Asked, "page.asked", "Asked", GLFW_KEY_A},
                             {AuthorPage::Bench, "page.bench", "Bench", GLFW_KEY_O},
                             {AuthorPage::Questions, "page.questions", "Questions", GLFW_KEY_N},
                             {AuthorPage::Marks, "page.marks", "Marks", GLFW_KEY_K},
                             {AuthorPage::Wish, "page.wish", "Look like this", GLFW_KEY_M},
                             {AuthorPage::File, "page.file", "File", GLFW_KEY_F}};

constexpr const char* keys_hint =
    "Pages: S specimen, Y way, Q request, C counter, A asked, O bench, N questions, K marks, M look like "
    "this, F file. T leads to the buttons above, F6 to the other half; W, B, P change the card. Ctrl+Z goes "
    "back, Ctrl+Y on, Ctrl+S saves.";

struct Parts {
  render::Rect strip;
  render::Rect page;
  render::Rect bench;
  render::Rect message;
};

/// They tile the window. `asks`: the strip holds a question besides, which may need a second line.
Parts parts(float width, float height, float scale, bool asks) {
  const bool narrow = width / scale < 1000;
  const float strip_h = std::floor((narrow && asks ? 76.0F : 46.0F) * scale);
  const float message_h = std::floor((narrow ? 80.0F : 74.0F) * scale);
  const float page_w = std::floor(std::clamp(560.0F * scale, 0.44F * width, 0.58F * width));
  const float middle_h = std::max(height - strip_h - message_h, 0.0F);
  return {{0, 0, width, strip_h},
          {0, strip_h, page_w, middle_h},
          {page_w, strip_h, width - page_w, middle_h},
          {0, strip_h + middle_h, width, message_h}};
}

void show_page(AuthorView& view, AuthorPage page) {
  view.page = page;
  view.focus_page = 3;
  view.at_bench = false;
}

void draw_page_row(App& app) {
  bool first = true;
  for (const PageRow& row : pages) {
    if (!first) {
      flow(width_of(row.label));
    }
    first = false;
    const bool open = app.author->page == row.page;
    ImGui::PushStyleColor(ImGuiCol_Button,
                          ImGui::GetStyleColorVec4(open ? ImGuiCol_TabActive : ImGuiCol_Tab));
    if (app.widgets.button(row.name, row.label) && !open) {
      show_page(*app.author, row.page);
    }
    ImGui::PopStyleColor();
  }
  ImGui::Separator();
}

/// What is wrong with the case as it stands.
void draw_problems(const drafting::Form& form) {
  constexpr std::size_t most = 3;
  for (std::size_t i = 0; i < std::min(most, form.problems.size()); ++i) {
    ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_CheckMark));
    ImGui::TextWrapped("%s", form.problems[i].c_str());
    ImGui::PopStyleColor();
  }
  if (form.problems.size() > most) {
    ImGui::Text("and %d more", static_cast<int>(form.problems.size() - most));
  }
}

void draw_form(App& app, const render::Rect& area) {
  AuthorView& view = *app.author;
  const Pane pane("form", area);
  draw_page_row(app);
  draw_problems(view.studio->form());
  for (const PageRow& row : pages) {
    if (row.page == view.page) {
      app.widgets.tell("page", row.label);
      ImGui::BeginChild(row.name, {0, 0}, false, ImGuiWindowFlags_NavFlattened);
      if (view.focus_page > 0) {
        --view.focus_page;
        app.widgets.focus_next();
      }
      draw_author_page(app);
      ImGui::EndChild();
    }
  }
}

void draw_foot(App& app, const render::Rect& area) {
  const Pane pane("message", area, ImGuiWindowFlags_NoNav);
  ImGui::PushTextWrapPos(0);
  if (!app.message.empty()) {
    ImGui::TextUnformatted(app.message.c_str());
  }
  ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_TextDisabled));
  ImGui::TextUnformatted(app.author->hint.empty() ? keys_hint : app.author->hint.c_str());
  ImGui::PopStyleColor();
  ImGui::PopTextWrapPos();
}

void tell(App& app) {
  const AuthorView& view = *app.author;
  const auto& studio = *view.studio;
  const auto& seen = studio.seen();
  app.widgets.tell("problems", std::to_string(studio.form().problems.size()));
  app.widgets.tell("unsaved", studio.unsaved() ? "1" : "0");
  app.widgets.tell("bench", seen.done ? "done" : "working");
  app.widgets.tell("making", studio.making() ? "1" : "0");
  app.widgets.tell("proposal", studio.proposal() ? "1" : "0");
  app.widgets.tell("warnings", std::to_string(seen.warnings.size()));
  const auto& form = studio.form();
  if (form.answer) {
    app.widgets.tell("answer", form.answer->verdict + (form.answer_fresh ? "" : " (old)"));
  }
  const int worth = std::accumulate(seen.worth.begin(), seen.worth.end(), 0,
                                    [](int sum, const auto& ledger) { return sum + ledger.marks; });
  app.widgets.tell("worth", std::to_string(worth) + (seen.figures_fresh ? "" : " (old)"));
  app.widgets.tell("weights", std::to_string(form.weights.size()));
  if (seen.floating) {
    app.widgets.tell("float", seen.floating->word + (seen.floating->fresh ? "" : " (old)"));
  }
  for (const auto& test : seen.tests) {
    app.widgets.tell("test." + test.test, test.word + (test.fresh ? "" : " (old)"));
  }
  for (const auto& [label, value] : seen.figures) {
    std::string name = "figure." + label;
    std::replace(name.begin(), name.end(), ' ', '_');
    app.widgets.tell(name, value);
  }
}

bool pressed(int key) {
  return ImGui::IsKeyPressed(key, false);
}

void go_back(App& app, bool on) {
  auto& studio = *app.author->studio;
  const std::string words = on ? studio.redo() : studio.undo();
  app.say(words.empty() ? "There is nothing to go back to." : (on ? "Done again: " : "Taken back: ") + words);
}

void set_card(App& app, appearance::Card card) {
  app.author->view.card = card;
}

} // namespace

bool at_author(const App& app) {
  return app.author && app.author->on_show;
}

std::string author_screen(const App& app) {
  return app.author->studio->begun() ? "author" : "author.begin";
}

double author_rest_s(const App& app) {
  return app.author->waits ? while_working_s : -1;
}

void enter_draft(App& app) {
  AuthorView& view = *app.author;
  view.name = view.studio->suggested_name();
  view.tubes.clear();
  view.wish = {};
  view.replace_wanted = view.leave_wanted = false;
  view.at_bench = false;
  app.message.clear();
  show_page(view, AuthorPage::Specimen);
}

void apply_wanted(App& app) {
  AuthorView& view = *app.author;
  if (!view.wanted) {
    return;
  }
  const auto wanted = std::move(view.wanted);
  view.wanted = nullptr;
  const bool begun = view.studio->begun();
  const std::string problem = wanted(*view.studio);
  if (!problem.empty()) {
    app.say(problem, true);
  } else {
    app.message.clear();
    if (!begun && view.studio->begun()) {
      enter_draft(app);
    }
  }
}

void save_draft(App& app, bool replace) {
  AuthorView& view = *app.author;
  const auto saved = view.studio->save(view.name, replace);
  view.replace_wanted = saved.outcome == drafting::Saved::Outcome::Asks;
  app.say(saved.words, saved.outcome != drafting::Saved::Outcome::Written);
}

void leave_draft(App& app, bool really) {
  AuthorView& view = *app.author;
  if (view.studio->unsaved() && !really) {
    view.leave_wanted = true;
    view.focus_strip = 3; // The button that was pressed is gone.
    app.say("This case is not saved.", true);
    return;
  }
  view.leave_wanted = false;
  view.studio->close();
  app.message.clear();
  app.focus_screen = 3;
  find_cases(app);
}

void try_draft(App& app) {
  const auto file = app.author->studio->file();
  app.author->on_show = false;
  app.focus_screen = 3;
  find_cases(app);
  app.open(file);
}

void draw_author_strip(App& app, const render::Rect& area) {
  AuthorView& view = *app.author;
  const Pane pane("strip", area, ImGuiWindowFlags_NoScrollbar);
  if (view.focus_strip > 0) {
    --view.focus_strip;
    app.widgets.focus_next();
  }
  if (view.leave_wanted) {
    if (app.widgets.button("author.leave.yes", "Leave it unsaved")) {
      leave_draft(app, true);
      return;
    }
    ImGui::SameLine();
    if (app.widgets.button("author.leave.no", "Stay")) {
      view.leave_wanted = false;
      view.focus_strip = 3;
    }
  } else if (app.widgets.button("author.leave", "Back")) {
    leave_draft(app, false);
    return;
  }
  ImGui::SameLine();
  if (app.widgets.button("author.undo", "Undo", view.studio->can_undo())) {
    go_back(app, false);
  }
  ImGui::SameLine();
  if (app.widgets.button("author.redo", "Redo", view.studio->can_redo())) {
    go_back(app, true);
  }
  const float name_w = std::min(ImGui::GetFontSize() * 13, area.w * 0.24F);
  ImGui::SameLine();
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("File");
  flow(name_w + width_of("Save"));
  (void)app.widgets.line("author.name", view.name, name_w);
  ImGui::SameLine();
  if (app.widgets.button("author.save", "Save")) {
    save_draft(app, false);
  }
  if (view.replace_wanted) {
    flow(width_of("Replace it"));
    if (app.widgets.button("author.replace", "Replace it")) {
      save_draft(app, true);
    }
  }
  flow(width_of("Try it"));
  if (app.widgets.button("author.try", "Try it", !view.studio->unsaved())) {
    try_draft(app);
    return;
  }
  flow(ImGui::GetFontSize() * 9);
  draw_text_size(app);
}

void handle_author_keys(App& app) {
  AuthorView& view = *app.author;
  if (ImGui::GetIO().WantTextInput) {
    return;
  }
  if (ImGui::GetIO().KeyCtrl) {
    if (pressed(GLFW_KEY_Z)) {
      go_back(app, false);
    } else if (pressed(GLFW_KEY_Y)) {
      go_back(app, true);
    } else if (pressed(GLFW_KEY_S)) {
      save_draft(app, false);
    }
    return;
  }
  for (const PageRow& row : pages) {
    if (pressed(row.key)) {
      show_page(view, row.page);
    }
  }
  if (pressed(GLFW_KEY_W)) {
    set_card(app, appearance::Card::White);
  } else if (pressed(GLFW_KEY_B)) {
    set_card(app, appearance::Card::Black);
  } else if (pressed(GLFW_KEY_P)) {
    set_card(app, appearance::Card::Printed);
  } else if (pressed(GLFW_KEY_T)) {
    view.focus_strip = 3;
  } else if (pressed(GLFW_KEY_F6)) {
    view.at_bench = !view.at_bench;
    (view.at_bench ? view.focus_bench : view.focus_page) = 3;
  } else if (pressed(GLFW_KEY_ESCAPE)) {
    view.leave_wanted = view.replace_wanted = false;
    view.studio->stop_making();
  }
}

void draw_author(App& app, float width, float height) {
  AuthorView& view = *app.author;
  if (!view.studio->begun()) {
    view.waits = false;
    draw_author_begin(app, {0, 0, width, height});
    apply_wanted(app);
    return;
  }
  handle_author_keys(app);
  view.waits = view.studio->working(); // Asked first: what ends in between is taken over below.
  if (view.studio->poll() && view.looked_for && !view.studio->making()) {
    view.looked_for = false;
    view.focus_page = view.page == AuthorPage::Wish && !view.at_bench ? 3 : 0; // What was found stands first.
  }
  if (view.typed_version != view.studio->version()) {
    view.typed.clear();
    view.typed_version = view.studio->version();
  }
  view.hint.clear();
  const Parts where = parts(width, height, app.aids.text_scale, view.leave_wanted || view.replace_wanted);
  draw_author_strip(app, where.strip);
  if (!view.studio->begun() || !view.on_show) {
    return;
  }
  draw_form(app, where.page);
  draw_author_bench(app, where.bench);
  draw_foot(app, where.message);
  tell(app);
  apply_wanted(app);
  view.waits = view.waits || view.studio->working();
}

} // namespace matula::window
