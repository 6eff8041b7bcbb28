package varanid.intake.diary;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.AnimalChanged;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.KeptLook;
import varanid.intake.assessment.Looks;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Correctable;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;

/** Keeps entries, and says when one of them asks for a look. */
@Service
public class DiaryKeeper {

    private static final Correctable ENTRY = new Correctable("entry", "entry", "entries");

    private final DiaryRows rows;
    private final Diary diary;
    private final Animals animals;
    private final Looks looks;
    private final DemeanourRules rules;
    private final OrganisationLock lock;
    private final ApplicationEventPublisher events;
    private final Ids ids;
    private final Clock clock;

    DiaryKeeper(
            DiaryRows rows,
            Diary diary,
            Animals animals,
            Looks looks,
            DemeanourReference reference,
            OrganisationLock lock,
            ApplicationEventPublisher events,
            Ids ids,
            Clock clock) {
        this.rows = rows;
        this.diary = diary;
        this.animals = animals;
        this.looks = looks;
        this.rules = reference.rules();
        this.lock = lock;
        this.events = events;
        this.ids = ids;
        this.clock = clock;
    }

    /**
     * Reads an entry and keeps it.
     *
     * @return its id
     * @throws ProblemException 404 where the organisation has no such animal, 422 with every fault of the request, 409
     *     where it corrects what was corrected already
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public UUID keep(Caller caller, UUID animalId, JsonRequest request) {
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
        Present present = Present.at(clock, caller.zone());
        NewDiaryEntry given = request.read(fields -> NewDiaryEntry.read(fields, present));
        return keep(caller, animalId, given).id();
    }

    /**
     * @throws ProblemException 422 where it corrects what is no entry of this animal, 409 where it corrects what was
     *     corrected already
     */
    @Transactional(propagation = Propagation.MANDATORY)
    DiaryRow keep(Caller caller, UUID animalId, NewDiaryEntry entry) {
        lock.hold(caller.organisationId());
        UUID supersedes = entry.supersedes();
        if (supersedes != null) {
            mayBeSuperseded(caller, animalId, supersedes);
        }
        Instant now = clock.instant();
        DiaryRow kept = rows.saveAndFlush(new DiaryRow(
                caller.key(ids.next()),
                animalId,
                caller.personId(),
                now,
                LocalDate.ofInstant(entry.occurredAt(), caller.zone()),
                entry));
        events.publishEvent(AnimalChanged.of(caller.organisationId(), animalId));
        return kept;
    }

    private void mayBeSuperseded(Caller caller, UUID animalId, UUID supersedes) {
        ENTRY.check(
                rows.find(caller.organisationId(), animalId, supersedes).isPresent(),
                () -> rows.listSuccessors(caller.organisationId(), List.of(supersedes)).stream()
                        .map(DiaryRow::id)
                        .findFirst());
    }

    /** The reasons to look at the animal now that an entry gives, in words; none where the animal has no such entry. */
    @Transactional(readOnly = true)
    public List<String> listReasonsToLookNow(UUID organisationId, UUID animalId, UUID entryId) {
        return rows
                .find(organisationId, animalId, entryId)
                .map(row -> lookNow(organisationId, row.entry()))
                .orElse(List.of())
                .stream()
                .map(LookNow::text)
                .toList();
    }

    /** The reasons to look now that this entry gives. */
    List<LookNow> lookNow(UUID organisationId, DiaryEntry entry) {
        List<LookNow> reasons = new ArrayList<>();
        if (entry.demeanour().filter(it -> it == Demeanour.DULL).isPresent()) {
            reasons.add(LookNow.of(rules, DemeanourRules.DULL));
        }
        if (entry.miteCheck() == MiteCheck.SEEN) {
            reasons.add(LookNow.of(rules, DemeanourRules.MITE_SEEN));
        }
        if (entry.demeanour().filter(it -> it == Demeanour.CALM).isPresent()
                && isSuddenlyCalmAndIll(
                        organisationId,
                        entry.animalId(),
                        diary.list(organisationId, entry.animalId()),
                        entry.localDate())) {
            reasons.add(LookNow.of(rules, DemeanourRules.SUDDENLY_CALM));
        }
        return reasons;
    }

    /** Suddenly calm, and beside it food refused or a sign in the last look that by itself asks for a vet. */
    boolean isSuddenlyCalmAndIll(UUID organisationId, UUID animalId, List<DiaryEntry> entries, LocalDate asOf) {
        TreeMap<LocalDate, Demeanour> byDay =
                DemeanourTrend.byDay(entries, asOf.minusDays(rules.trend().windowDays() - 1L), asOf);
        boolean recent = !byDay.isEmpty() && byDay.lastKey().isAfter(asOf.minusDays(rules.recentDays()));
        return recent
                && DemeanourTrend.isSuddenlyCalm(byDay, rules.suddenlyCalm())
                && (refusedFood(entries, asOf) || hadASign(organisationId, animalId, asOf));
    }

    /** Whether the last food that was offered was refused. */
    private static boolean refusedFood(List<DiaryEntry> entries, LocalDate asOf) {
        return entries.stream()
                .filter(entry -> !entry.localDate().isAfter(asOf))
                .flatMap(entry -> entry.ate().stream())
                .filter(ate -> ate != Ate.NOT_OFFERED)
                .reduce((earlier, later) -> later)
                .filter(ate -> ate == Ate.NONE)
                .isPresent();
    }

    private boolean hadASign(UUID organisationId, UUID animalId, LocalDate asOf) {
        return looks.findLatest(organisationId, animalId, asOf).map(KeptLook::signs).stream()
                .flatMap(List::stream)
                .anyMatch(sign -> sign.floor().isPresent());
    }
}
