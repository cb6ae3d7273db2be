#include "engine/strict/disk.hpp"
#include "engine/window/author.hpp"
#include "engine/window/case_list.hpp"

#include <algorithm>

namespace matula::window {

namespace fs = std::filesystem;

namespace {

int rank(const std::string& level) {
  return level == "newcomer" ? 0 : level == "first" ? 1 : level == "trap" ? 2 : 3;
}

} // namespace

std::vector<Offer> list_cases(const desk::Ground& ground, const fs::path& folder) {
  std::vector<Offer> offers;
  for (const fs::path& file : strict::files_in(folder, ".toml")) {
    Offer offer;
    offer.file = file;
    const auto brief = desk::read_brief(ground, file);
    if (brief) {
      offer.title = brief->title;
      offer.level = brief->level;
      offer.request = brief->request;
    } else {
      offer.problem = scenario::to_text(brief.error());
    }
    offers.push_back(offer);
  }
  std::stable_sort(offers.begin(), offers.end(),
                   [](const Offer& a, const Offer& b) { return rank(a.level) < rank(b.level); });
  return offers;
}

void find_cases(App& app) {
  app.offers = list_cases(app.ground, app.options.scenarios);
  const auto own = list_cases(app.ground, own_cases(app));
  app.offers.insert(app.offers.end(), own.begin(), own.end());
  app.unfinished.clear();
  for (const fs::path& file : strict::files_in(app.options.sittings, ".jsonl")) {
    const desk::KeptSitting kept = desk::look_into(file);
    const auto offer = std::find_if(app.offers.begin(), app.offers.end(), [&](const Offer& one) {
      return one.file.stem().string() == kept.scenario;
    });
    const bool known = offer != app.offers.end();
    if (!kept.handed_in) {
      // The name of the file may tell what the case is about.
      const std::string name = file.stem().string();
      const std::string number = name.substr(name.rfind('-') + 1);
      app.unfinished.push_back({file, known ? offer->title + ", sitting " + number : name});
    } else if (known) {
      ++offer->done;
    }
  }
}

} // namespace matula::window
