// The ladders of the colour tests, printed: run with the tag [ladders] to see what the lines are chosen from.
#include "tests/published/colour_support.hpp"

#include <ctime>
#include <iostream>

using namespace matula;
using namespace matula::tests;

namespace {

void print(const std::string& test, const std::string& species, const std::vector<double>& doses) {
  for (const double dose : doses) {
    const std::clock_t from = std::clock();
    const Worked worked = by_the_book(test, dose > 0 ? Doses{{species, dose}} : Doses{});
    const double took_ms = 1000.0 * static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC;
    const ColourSeen seen = worked.read(test);
    std::cout << test << ' ' << species << ' ' << dose << " mg/dL: " << seen.strength << "  " << seen.word
              << "  L " << seen.lab.l << " a " << seen.lab.a << " b " << seen.lab.b << "  " << took_ms
              << " ms\n";
  }
}

} // namespace

TEST_CASE("ladders of the colour tests", "[.ladders]") {
  for (const char* test : {"ehrlich", "ehrlich_chloroform"}) {
    print(test, "urobilinogen", {0, 0.1, 0.3, 0.5, 1, 1.5, 2, 4, 6, 12});
    print(test, "porphobilinogen", {0.2, 0.5, 1, 2, 9, 40});
    print(test, "indican", {2, 21});
    print(test, "sulphonamide", {25, 100});
    print(test, "bilirubin", {1, 6});
  }
  print("guaiac", "haemoglobin", {0, 0.3, 0.7, 1.5, 3, 8, 20, 100});
  print("guaiac", "methaemoglobin", {3, 20});
  print("guaiac", "myoglobin", {3, 100});
  print("guaiac", "myeloperoxidase", {0.5, 5});
  print("seliwanoff", "fructose", {0, 20, 50, 100, 200, 500, 1000});
  print("seliwanoff", "glucose", {1000, 2000, 4000});
  print("seliwanoff", "xylose", {200, 1000});
  print("seliwanoff", "sucrose", {500});
  print("bial", "xylose", {0, 20, 50, 100, 200, 500, 1000});
  print("bial", "glucose", {1000, 4000});
  print("bial", "fructose", {500, 2000});
  for (const char* sugar : {"glucose", "fructose", "maltose", "galactose", "lactose", "xylose", "sucrose"}) {
    print("fermentation", sugar, {1000});
    print("benedict", sugar, {1000});
  }
}

TEST_CASE("Hay by the book: 1 in 10 000 of bile salts sinks at once, plain urine carries the sulphur") {
  // H. Varley 1967, from memory.
  CHECK(seen_by_the_book("hay", {}).word == "floats");
  CHECK(seen_by_the_book("hay", {{"bile_salts", 0.5}}).word == "floats");
  CHECK(seen_by_the_book("hay", {{"bile_salts", 10}}).word == "sinks at once");
  CHECK(seen_by_the_book("hay", {{"bile_salts", 50}}).word == "sinks at once");
}
