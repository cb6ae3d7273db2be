#include "engine/desk/ground.hpp"
#include "engine/window/case_list.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace matula;

namespace {
int place_of_level(const std::string& level) {
  const std::vector<std::string> order{"newcomer", "first", "trap", "exam"};
  return static_cast<int>(std::find(order.begin(), order.end(), level) - order.begin());
}
} // namespace

// Nobody who opens the window for the first time should have to search for the case made for them.
TEST_CASE("The case made for newcomers is the first on the list, the others follow by level") {
  const auto ground = desk::Ground::load();
  REQUIRE(ground);
  const auto offers = window::list_cases(*ground, MATULA_SOURCE_DIR "/scenarios");
  REQUIRE(offers.size() > 60);
  CHECK(offers.front().file.stem() == "first_case");
  CHECK(offers[1].level != "newcomer");
  for (std::size_t i = 1; i < offers.size(); ++i) {
    INFO(offers[i].file);
    CHECK(offers[i].problem.empty());
    CHECK(place_of_level(offers[i - 1].level) <= place_of_level(offers[i].level));
  }
}
