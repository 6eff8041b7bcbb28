package varanid.intake.reminder;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.stereotype.Component;

/** Plans what a test tells it, for organisations that a test told it about; of all others it knows nothing. */
@Component
class ToldTasks implements TaskSource {

    private final Map<UUID, List<PlannedTask>> told = new ConcurrentHashMap<>();
    private final Map<UUID, LocalDate> askedFor = new ConcurrentHashMap<>();

    void tell(UUID organisationId, PlannedTask... tasks) {
        told.put(organisationId, List.of(tasks));
    }

    /** The day that was last asked for. */
    LocalDate lastAsOf(UUID organisationId) {
        return askedFor.getOrDefault(organisationId, LocalDate.MIN);
    }

    @Override
    public List<PlannedTask> tasks(UUID organisationId, ZoneId zone, Optional<UUID> animalId, LocalDate asOf) {
        if (!told.containsKey(organisationId)) {
            return List.of();
        }
        askedFor.put(organisationId, asOf);
        return told.get(organisationId).stream()
                .filter(task -> animalId.isEmpty() || animalId.get().equals(task.animalId()))
                .toList();
    }
}
