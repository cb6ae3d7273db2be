#include "engine/scenario/parts.hpp"

namespace matula::scenario {

Patient read_patient(const strict::Table& root) {
  const strict::Table table = root.table("patient");
  Patient patient;
  patient.name = table.text("name");
  patient.age_sex = table.text("age_sex");
  patient.ward = table.text("ward");
  patient.request = table.text("request");
  patient.specimen_note = table.text("specimen_note");
  return patient;
}

} // namespace matula::scenario
