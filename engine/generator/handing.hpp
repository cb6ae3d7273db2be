#pragma once

#include "engine/generator/measured.hpp"
#include "engine/strict/table.hpp"

#include <optional>
#include <string>
#include <vector>

namespace matula::generator {

class Luck;
struct Person;

/// One stretch of a pattern's way to the bench: `[[specimen.leg]]`.
struct Stretch {
  Measured minutes;
  Measured temperature_c;
  bool open = false;
  double lux = 0;
};

/// Something put into the container on the way: `[[specimen.preservative]]`.
struct PutIn {
  std::string bottle;
  std::string dose_per_100_ml; ///< As written, with its unit.
  double at_min = 0;           ///< After the void.
};

/// What happens to a pattern's specimens between patient and bench.
struct Way {
  std::vector<Stretch> stretches;
  std::vector<PutIn> put_in;
};

/// How a pattern's specimens come over the counter: `[collection]`. Times follow from the delay, or from the
/// way where there is one; the label's preservative from what is put in.
struct Handing {
  std::string number; ///< Each # becomes a digit.
  std::string kind;   ///< A kind of the reception's book, or "midstream" for the patient's own.
  std::vector<std::string> requests;
  std::string container;
  std::vector<std::string> passed; ///< Clock times to choose from; the start of a 24-hour collection.
  std::optional<Measured> delay_min;
  std::string storage;
  std::string preservative; ///< On the label.
  bool preservative_mislabelled = false;
  bool time_written = true;
  std::vector<std::pair<std::string, std::string>>
      words; ///< label, label_name, label_number, contamination, remark.
  std::vector<std::pair<std::string, bool>> flags; ///< leaking, replaceable: only what is not the default.
};

/// A way and a handing as one patient has them; minutes are whole fives.
struct HandedIn {
  std::vector<int> stretch_min;
  std::vector<double> stretch_c;
  int delay_min = 0; ///< From the void (the end of a 24-hour collection) to the counter.
  int passed_min = 0;
  int received_min = 0;
};

[[nodiscard]] Way read_way(const strict::Table& specimen);
/// Nothing when the pattern has no [collection].
[[nodiscard]] std::optional<Handing> read_handing(const strict::Table& root, const Way& way);

[[nodiscard]] HandedIn draw_handing(const std::optional<Handing>& handing, const Way& way, const Luck& luck);

/// "25 minutes", "1 hour 20 minutes".
[[nodiscard]] std::string say_delay(int minutes);

/// The sections of the scenario file.
[[nodiscard]] std::string write_way(const Way& way, const HandedIn& handed);
[[nodiscard]] std::string write_handing(const Handing& handing, const HandedIn& handed, const Person& person,
                                        const Luck& luck);

} // namespace matula::generator
