package varanid.intake.quarantine;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Component;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** How many days the organisation keeps newcomers apart, where that is longer than the policy. */
@Component
class HouseRules {

    private static final TypeReference<Map<String, Integer>> DAYS = new TypeReference<>() {};

    private final QuarantineSettings settings;
    private final JsonMapper json;

    HouseRules(QuarantineSettings settings, JsonMapper json) {
        this.settings = settings;
        this.json = json;
    }

    Optional<QuarantineSettingRow> findCurrent(UUID organisationId) {
        return settings.listNewestFirst(organisationId, Limit.of(1)).stream().findFirst();
    }

    /** By origin; those without a rule of the house are left out. */
    Map<Origin, Integer> days(UUID organisationId) {
        return findCurrent(organisationId).map(this::days).orElseGet(() -> new EnumMap<>(Origin.class));
    }

    Map<Origin, Integer> days(QuarantineSettingRow row) {
        Map<Origin, Integer> days = new EnumMap<>(Origin.class);
        json.readValue(row.days, DAYS)
                .forEach((origin, number) -> Origin.find(origin).ifPresent(known -> days.put(known, number)));
        return days;
    }

    Map<String, Integer> byCode(QuarantineSettingRow row) {
        return byCode(days(row));
    }

    String write(Map<Origin, Integer> days) {
        return json.writeValueAsString(byCode(days));
    }

    private static Map<String, Integer> byCode(Map<Origin, Integer> days) {
        Map<String, Integer> byCode = new TreeMap<>();
        days.forEach((origin, number) -> byCode.put(origin.code(), number));
        return byCode;
    }
}
