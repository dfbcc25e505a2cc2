#include "wire/devices.h"

#include "wire/json_pieces.h"
#include "wire/request_reader.h"

#include <utility>

namespace keenfall::wire {

namespace {

Json device_json(const Device& device) {
  return {{"id", device.id},
          {"name", device.name},
          {"let_in_at_utc", device.let_in_at_utc},
          {"last_seen_at_utc", device.last_seen_at_utc}};
}

}  // namespace

std::string devices_to_json(const DevicesTold& told) {
  Json object = {{"is_open", told.is_open},
                 {"is_encrypted", told.is_encrypted},
                 {"addresses", told.addresses},
                 {"devices", Json::array()},
                 {"cautions", told.cautions}};
  for (const Device& device : told.devices) object["devices"].push_back(device_json(device));
  if (told.letting_in) {
    object["letting_in"] = {{"code", told.letting_in->code},
                            {"seconds_left", finite_number(told.letting_in->seconds_left)},
                            {"address", told.letting_in->address},
                            {"squares", told.letting_in->squares}};
  }
  return in_one_line(object);
}

std::string let_in_to_json(const std::string& key) { return in_one_line(Json{{"key", key}}); }

base::ResultOrProblems<AskToBeLetIn> ask_to_be_let_in_from(const std::string& body) {
  RequestReader reader(body);
  reader.require("code", "the code that the desk shows");
  reader.require("name", "what this device is called");
  AskToBeLetIn ask{.code = reader.text("code").value_or(""),
                   .name = reader.text("name").value_or("")};
  return unless_problems(reader, std::move(ask));
}

std::string kept_devices_to_json(const std::vector<Device>& devices) {
  Json object = {{"devices", Json::array()}};
  for (const Device& device : devices) {
    Json one = device_json(device);
    one["key_digest"] = device.key_digest;
    object["devices"].push_back(std::move(one));
  }
  return in_one_line(object);
}

std::optional<std::vector<Device>> kept_devices_from(const std::string& text) {
  RequestReader reader(text);
  std::vector<Device> devices;
  for (RequestReader& one : reader.objects("devices")) {
    for (const char* field : {"id", "name", "key_digest", "let_in_at_utc", "last_seen_at_utc"}) {
      one.require(field, "a text");
    }
    devices.push_back({.id = one.text("id").value_or(""),
                       .name = one.text("name").value_or(""),
                       .key_digest = one.text("key_digest").value_or(""),
                       .let_in_at_utc = one.text("let_in_at_utc").value_or(""),
                       .last_seen_at_utc = one.text("last_seen_at_utc").value_or("")});
  }
  if (!reader.problems().empty()) return std::nullopt;
  return devices;
}

}  // namespace keenfall::wire
