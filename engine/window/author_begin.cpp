// Where a case begins: nothing, a pattern, a copy, or a case of one's own.
#include "engine/window/author_view.hpp"
#include "engine/window/fonts.hpp"
#include "engine/window/group.hpp"
#include "engine/window/pane.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace matula::window {

namespace {

using drafting::Studio;

/// Reads what making cases needs, once; false with the reason in the message.
bool enter_studio(App& app) {
  if (app.author) {
    return true;
  }
  auto studio = Studio::open(app.ground.world(), app.ground.standards(),
                             {app.ground.assets_folder(), own_cases(app), app.options.scenarios});
  if (!studio) {
    app.say(scenario::to_text(studio.error()), true);
    return false;
  }
  app.author = std::make_shared<AuthorView>(std::move(*studio));
  return true;
}

void leave_studio(App& app) {
  app.author->on_show = false;
  app.message.clear();
  app.focus_screen = 3;
  find_cases(app);
}

/// A line of a list: a button, a name, and what there is to say.
bool offer(App& app, const std::string& name, const char* button, const std::string& title,
           const std::string& about) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  const bool pressed = app.widgets.button(name.c_str(), button);
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  ImGui::TextWrapped("%s", title.c_str());
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  ImGui::TextWrapped("%s", about.c_str());
  return pressed;
}

bool begin_list(const char* name) {
  if (!ImGui::BeginTable(name, 3, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return false;
  }
  ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed);
  ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthStretch, 2);
  ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthStretch, 3);
  return true;
}

std::string spoken(std::string key) {
  std::replace(key.begin(), key.end(), '_', ' ');
  return key;
}

std::uint64_t patient_number(const std::string& words) {
  std::uint64_t number = 0;
  std::from_chars(words.data(), words.data() + words.size(), number);
  return number;
}

void draw_own(App& app) {
  AuthorView& view = *app.author;
  heading("A case of your own, to be changed");
  const auto files = view.studio->own_files();
  if (files.empty()) {
    ImGui::TextWrapped("None yet. They are kept in %s.", own_cases(app).c_str());
    return;
  }
  if (begin_list("own")) {
    for (const auto& file : files) {
      const auto known = std::find_if(app.offers.begin(), app.offers.end(),
                                      [&](const Offer& one) { return one.file == file; });
      const std::string about = known == app.offers.end() ? ""
                                : known->problem.empty()  ? known->title
                                                          : "does not read well yet";
      if (offer(app, "author.own." + file.stem().string(), "Change", file.stem().string(), about)) {
        view.wanted = [file](Studio& studio) { return studio.begin_own(file); };
      }
    }
    ImGui::EndTable();
  }
}

void draw_patterns(App& app) {
  AuthorView& view = *app.author;
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Patient number");
  ImGui::SameLine();
  (void)app.widgets.line("author.patient", view.patient, number_width());
  ImGui::SameLine();
  ImGui::TextUnformatted("(0: the typical one)");
  if (begin_list("patterns")) {
    for (const auto& pattern : view.studio->patterns()) {
      if (offer(app, "author.pattern." + pattern.key, "Make one", spoken(pattern.key), pattern.about)) {
        view.wanted = [key = pattern.key, seed = patient_number(view.patient)](Studio& studio) {
          return studio.begin_pattern(key, seed);
        };
      }
    }
    ImGui::EndTable();
  }
}

void draw_copies(App& app) {
  if (!begin_list("copies")) {
    return;
  }
  for (const Offer& one : app.offers) {
    const std::string key = one.file.stem().string();
    if (one.problem.empty() && offer(app, "author.copy." + key, "Copy", one.title, one.request)) {
      app.author->wanted = [file = one.file](Studio& studio) { return studio.begin_copy(file); };
    }
  }
  ImGui::EndTable();
}

} // namespace

std::filesystem::path own_cases(const App& app) {
  return app.options.sittings / "cases";
}

void draw_author_entry(App& app) {
  if (app.widgets.button("author", "Make or change a case") && enter_studio(app)) {
    app.author->on_show = true;
    app.message.clear();
    app.focus_screen = 3;
  }
}

void draw_author_begin(App& app, const render::Rect& area) {
  AuthorView& view = *app.author;
  const float width = std::min(area.w, ImGui::GetFontSize() * 66);
  const Pane pane("author.begin", {area.x + (area.w - width) / 2, area.y, width, area.h});
  if (app.focus_screen > 0) {
    --app.focus_screen;
    app.widgets.focus_next();
  }
  if (app.widgets.button("author.away", "Back to the start")) {
    leave_studio(app);
    return;
  }
  push_title_font();
  ImGui::TextUnformatted("Make or change a case");
  ImGui::PopFont();
  if (!app.message.empty()) {
    ImGui::TextWrapped("%s", app.message.c_str());
  }
  ImGui::BeginChild("beginnings", {0, 0}, false, ImGuiWindowFlags_NavFlattened);
  ImGui::TextWrapped(
      "You write down what the specimen holds; the bench works out what every test will show.");
  if (app.widgets.button("author.plain", "Begin with a plain urine")) {
    view.wanted = [](Studio& studio) { return studio.begin_plain(); };
  }
  draw_own(app);
  heading("A new case from another one");
  if (app.widgets.section("author.patterns",
                          "From a pattern: a consistent patient, another one for every number")) {
    draw_patterns(app);
  }
  if (app.widgets.section("author.copies", "A copy of a case")) {
    draw_copies(app);
  }
  ImGui::EndChild();
}

} // namespace matula::window
