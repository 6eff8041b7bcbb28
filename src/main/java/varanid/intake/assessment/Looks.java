package varanid.intake.assessment;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The looks at an animal that stand: a look that was superseded counts for nothing. */
@Service
public class Looks {

    private final AssessmentRows rows;
    private final StoredLooks stored;

    Looks(AssessmentRows rows, StoredLooks stored) {
        this.rows = rows;
        this.stored = stored;
    }

    /** The last look up to and including this day in the organisation's zone. */
    @Transactional(readOnly = true)
    public Optional<KeptLook> findLatest(UUID organisationId, UUID animalId, LocalDate asOf) {
        return rows.listStandingUpTo(organisationId, animalId, asOf, Limit.of(1)).stream()
                .map(stored::kept)
                .findFirst();
    }

    /** Every look that stands, by when it occurred; of several at one moment the one recorded first comes first. */
    @Transactional(readOnly = true)
    public List<KeptLook> list(UUID organisationId, UUID animalId) {
        return rows.listStanding(organisationId, animalId).stream()
                .map(stored::kept)
                .toList();
    }

    /** The last look of all that stand, beside the one before it. */
    @Transactional(readOnly = true)
    public Optional<LastLook> findLast(UUID organisationId, UUID animalId) {
        return rows.listStandingUpTo(organisationId, animalId, LocalDate.of(9999, 12, 31), Limit.of(1)).stream()
                .findFirst()
                .map(last -> stored.last(
                        last, findBefore(organisationId, animalId, last.checklistId(), last.occurredAt(), last.id())));
    }

    /** The look before this one, by the same checklist, that nothing superseded. */
    @Transactional(readOnly = true)
    public Optional<ReadLook> findReadBefore(UUID organisationId, ReadLook look) {
        return findBefore(
                        organisationId,
                        look.kept().animalId(),
                        look.edition().id(),
                        look.kept().occurredAt(),
                        look.kept().id())
                .map(stored::readLook);
    }

    private Optional<AssessmentRow> findBefore(
            UUID organisationId, UUID animalId, String checklistId, Instant occurredAt, UUID id) {
        return rows.listStandingBefore(organisationId, animalId, checklistId, occurredAt, id, Limit.of(1)).stream()
                .findFirst();
    }

    /**
     * The findings that a kept look of the animal was asked about, superseded or not, by their ids.
     *
     * @return empty where the animal has no such look
     */
    @Transactional(readOnly = true)
    public Optional<Set<String>> findFindings(UUID organisationId, UUID animalId, UUID lookId) {
        return rows.find(organisationId, animalId, lookId).map(stored::findings);
    }

    /** One look with all that is known of it, superseded or not. */
    @Transactional(readOnly = true)
    public Optional<ReadLook> findRead(UUID organisationId, UUID animalId, UUID lookId) {
        return rows.find(organisationId, animalId, lookId).map(stored::readLook);
    }

    /** The look that corrects this one. */
    @Transactional(readOnly = true)
    public Optional<UUID> findSuccessor(UUID organisationId, UUID lookId) {
        return rows.findSuccessor(organisationId, lookId).map(AssessmentRow::id);
    }

    /** Every look that stands, in the order of {@link #list}, with all that is known of it. */
    @Transactional(readOnly = true)
    public List<ReadLook> listRead(UUID organisationId, UUID animalId) {
        return rows.listStanding(organisationId, animalId).stream()
                .map(stored::readLook)
                .toList();
    }

    /** The last look up to and including this day that stands, with all that is known of it. */
    @Transactional(readOnly = true)
    public Optional<ReadLook> findLatestRead(UUID organisationId, UUID animalId, LocalDate asOf) {
        return rows.listStandingUpTo(organisationId, animalId, asOf, Limit.of(1)).stream()
                .map(stored::readLook)
                .findFirst();
    }

    /**
     * Every look there ever was, also those that were superseded, in the order of {@link #list}: for who has to know what
     * somebody could have read at a moment.
     */
    @Transactional(readOnly = true)
    public List<ReadLook> listReadEver(UUID organisationId, UUID animalId) {
        return rows.listEver(organisationId, animalId).stream()
                .map(stored::readLook)
                .toList();
    }
}
