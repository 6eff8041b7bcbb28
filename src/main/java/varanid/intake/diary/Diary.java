package varanid.intake.diary;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The diary of an animal as other features see it: entries that stand, a superseded one counts for nothing. */
@Service
public class Diary {

    private final DiaryRows rows;

    Diary(DiaryRows rows) {
        this.rows = rows;
    }

    /** Every entry that stands, by when it occurred; of several at one moment the one recorded first comes first. */
    @Transactional(readOnly = true)
    public List<DiaryEntry> list(UUID organisationId, UUID animalId) {
        return rows.listStanding(organisationId, animalId).stream()
                .map(DiaryRow::entry)
                .toList();
    }

    /** One that stands; nothing where the animal has none such, or it was superseded. */
    @Transactional(readOnly = true)
    public Optional<DiaryEntry> find(UUID organisationId, UUID animalId, UUID id) {
        return rows.find(organisationId, animalId, id)
                .filter(row -> rows.listSuccessors(organisationId, List.of(id)).isEmpty())
                .map(DiaryRow::entry);
    }

    /** The days, in order and each once, on which everything was cleaned. */
    @Transactional(readOnly = true)
    public List<LocalDate> listDatesOfFullClean(UUID organisationId, UUID animalId) {
        return list(organisationId, animalId).stream()
                .filter(entry -> entry.cleaning() == Cleaning.FULL_CLEAN)
                .map(DiaryEntry::localDate)
                .distinct()
                .sorted()
                .toList();
    }

    /** Every look for mites that somebody said they did, by when it occurred. */
    @Transactional(readOnly = true)
    public List<MitesLookedFor> listMiteChecks(UUID organisationId, UUID animalId) {
        return list(organisationId, animalId).stream()
                .filter(entry -> entry.miteCheck() != MiteCheck.NOT_LOOKED)
                .map(entry -> new MitesLookedFor(entry.id(), entry.localDate(), entry.miteCheck() == MiteCheck.SEEN))
                .toList();
    }

    /**
     * A look for mites.
     *
     * @param entryId the entry that says so
     * @param seen whether one was seen
     */
    public record MitesLookedFor(UUID entryId, LocalDate on, boolean seen) {}
}
