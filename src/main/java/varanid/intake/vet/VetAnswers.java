package varanid.intake.vet;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.animal.AnimalChanged;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.id.RowKey;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Correctable;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.Role;
import varanid.intake.share.OpenedLink;
import varanid.intake.vet.VetAnswer.CauseRuling;
import varanid.intake.vet.VetAnswer.FindingVerdict;
import varanid.intake.vet.VetAnswer.Ruling;
import varanid.intake.vet.VetAnswer.SawAnimal;
import varanid.intake.vet.VetAnswer.TestTaken;
import varanid.intake.vet.VetAnswer.Verdict;
import varanid.intake.vet.VetAnswer.Writer;

/** Keeps what vets answer, and reads it back. */
@Component
public class VetAnswers {

    private static final Correctable ANSWER = new Correctable("answer", "vet's answer", "vets' answers");
    private static final TypeReference<List<KeptFinding>> FINDINGS = new TypeReference<>() {};
    private static final TypeReference<List<KeptTest>> TESTS = new TypeReference<>() {};
    private static final TypeReference<List<KeptRuling>> RULINGS = new TypeReference<>() {};

    private final VetAnswerRows rows;
    private final ConfirmationRows confirmations;
    private final Terms terms;
    private final OrganisationLock lock;
    private final ApplicationEventPublisher events;
    private final JsonMapper json;
    private final Ids ids;
    private final Clock clock;

    VetAnswers(
            VetAnswerRows rows,
            ConfirmationRows confirmations,
            Terms terms,
            OrganisationLock lock,
            ApplicationEventPublisher events,
            JsonMapper json,
            Ids ids,
            Clock clock) {
        this.rows = rows;
        this.confirmations = confirmations;
        this.terms = terms;
        this.lock = lock;
        this.events = events;
        this.json = json;
        this.ids = ids;
        this.clock = clock;
    }

    /** How a finding is stored. */
    private record KeptFinding(
            @Nullable String finding,
            String verdict,
            @Nullable String level,
            @Nullable String words) {}

    private record KeptTest(
            String words, @Nullable LocalDate on, @Nullable String result) {}

    private record KeptRuling(String cause, String ruling) {}

    /**
     * Keeps what a clinician answers, as a request says it.
     *
     * @return its id
     * @throws ProblemException 403 for anybody else; 422 for a fault of the request
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public UUID keep(Caller caller, UUID animalId, JsonRequest request) {
        caller.require(Role.CLINICIAN);
        Present present = Present.at(clock, caller.zone());
        NewAnswer answer = request.read(fields -> NewAnswer.reader(fields, terms, present));
        return keep(caller.organisationId(), animalId, caller.personId(), answer)
                .id();
    }

    /**
     * Keeps an answer that a clinician writes with an account.
     *
     * @throws ProblemException 422 where it supersedes what is no earlier answer of the animal, 409 where that was
     *     superseded already
     */
    @Transactional(propagation = Propagation.MANDATORY)
    VetAnswer keep(UUID organisationId, UUID animalId, UUID personId, NewAnswer answer) {
        lock.hold(organisationId);
        return add(organisationId, animalId, answer, row -> {
            row.recordedBy = personId;
            row.confirmedFromStart = true;
        });
    }

    /**
     * Keeps an answer that came by a link; one that was sent twice is kept once.
     *
     * @param sent its key and content, where it has a key
     * @param oneContent whether a key is for one content only; else the same key with another content is another answer
     * @throws ProblemException 422 where {@code oneContent} and the key came with another content before
     */
    @Transactional(propagation = Propagation.MANDATORY)
    Kept keep(OpenedLink link, NewAnswer answer, Optional<Sent> sent, boolean oneContent) {
        lock.hold(link.organisationId());
        if (sent.isPresent()) {
            List<VetAnswerRow> before = rows.listSent(
                    link.organisationId(), link.linkId(), sent.get().keySha256());
            for (VetAnswerRow row : before) {
                if (sent.get().contentSha256().equals(row.contentSha256)) {
                    return new Kept(
                            read(link.organisationId(), link.animalId(), List.of(row))
                                    .get(0),
                            true);
                }
            }
            if (oneContent && !before.isEmpty()) {
                throw new ProblemException(
                        ProblemType.KEY_REUSED,
                        "This Idempotency-Key came with another answer before. Use a new key for a new answer.");
            }
        }
        return new Kept(
                add(link.organisationId(), link.animalId(), answer, row -> {
                    row.linkId = link.linkId();
                    row.confirmedFromStart = link.confirms();
                    row.keySha256 = sent.map(Sent::keySha256).orElse(null);
                    row.contentSha256 = sent.map(Sent::contentSha256).orElse(null);
                }),
                false);
    }

    /** What tells whether an answer was sent before: two SHA-256, in hexadecimal digits. */
    record Sent(String keySha256, String contentSha256) {}

    /** @param before whether it had been kept already */
    record Kept(VetAnswer answer, boolean before) {}

    /** Keeps an answer, and tells of it. The organisation's lock is held. */
    private VetAnswer add(UUID organisationId, UUID animalId, NewAnswer answer, Consumer<VetAnswerRow> from) {
        Instant now = clock.instant();
        VetAnswerRow row = new VetAnswerRow();
        row.key = new RowKey(organisationId, ids.next());
        row.animalId = animalId;
        row.answeredAt = answer.answeredAt() == null ? now : answer.answeredAt();
        row.recordedAt = now;
        row.seenUpTo = answer.seenUpTo();
        row.sawAnimal = answer.sawAnimal().code();
        row.urgency = answer.urgency().orElse(null);
        row.isolation = answer.isolation().orElse(null);
        row.findings = json.writeValueAsString(answer.findings().stream()
                .map(said -> new KeptFinding(
                        said.finding().orElse(null),
                        said.verdict().code(),
                        said.level().orElse(null),
                        said.words().orElse(null)))
                .toList());
        row.tests = json.writeValueAsString(answer.tests().stream()
                .map(test -> new KeptTest(
                        test.words(), test.on().orElse(null), test.result().orElse(null)))
                .toList());
        row.rulings = json.writeValueAsString(answer.rulings().stream()
                .map(said -> new KeptRuling(said.cause(), said.ruling().code()))
                .toList());
        row.instructions = answer.instructions().orElse(null);
        row.quarantineUntil = answer.quarantineUntil().orElse(null);
        row.approvesRelease = answer.approvesRelease().orElse(null);
        row.nextVisit = answer.nextVisit().orElse(null);
        row.words = answer.words().orElse(null);
        row.writerName = answer.writer().name();
        row.writerPractice = answer.writer().practice();
        row.writerLicence = answer.writer().licenceStatement();
        row.writerContact = answer.writer().contact().orElse(null);
        row.supersedes = answer.supersedes();
        from.accept(row);
        mayBeSuperseded(row);
        rows.saveAndFlush(row);
        events.publishEvent(new VetAnswered(organisationId, animalId, row.id(), row.confirmedFromStart));
        events.publishEvent(AnimalChanged.of(organisationId, animalId));
        return read(row, Optional.empty());
    }

    private void mayBeSuperseded(VetAnswerRow row) {
        if (row.supersedes == null) {
            return;
        }
        UUID organisationId = row.key.organisationId();
        Optional<VetAnswerRow> earlier = rows.find(organisationId, row.animalId, row.supersedes);
        ANSWER.check(
                earlier.isPresent(),
                () -> rows.findSuccessor(organisationId, earlier.orElseThrow().id())
                        .map(VetAnswerRow::id));
        if (earlier.orElseThrow().answeredAt.isAfter(row.answeredAt)) {
            throw new ProblemException(
                    ProblemType.INVALID_REQUEST,
                    "Only a later answer takes the place of an earlier one.",
                    List.of(Fault.at(
                            "#/supersedes",
                            "was given later, at " + earlier.orElseThrow().answeredAt,
                            "an answer given before this one")));
        }
    }

    /** Confirms an answer, and tells of it; one that is confirmed stays as it is. */
    @Transactional(propagation = Propagation.MANDATORY)
    VetAnswer confirm(UUID organisationId, UUID animalId, UUID answerId, UUID personId, Optional<String> note) {
        lock.hold(organisationId);
        VetAnswer answer = get(organisationId, animalId, answerId);
        if (answer.confirmed()) {
            return answer;
        }
        confirmations.saveAndFlush(new ConfirmationRow(
                new RowKey(organisationId, ids.next()),
                animalId,
                answerId,
                note.orElse(null),
                personId,
                clock.instant()));
        events.publishEvent(new VetAnswered(organisationId, animalId, answerId, true));
        events.publishEvent(AnimalChanged.of(organisationId, animalId));
        return get(organisationId, animalId, answerId);
    }

    /** @throws ProblemException 404 */
    VetAnswer get(UUID organisationId, UUID animalId, UUID id) {
        return find(organisationId, animalId, id).orElseThrow(() -> ProblemException.notFound("vet's answer"));
    }

    Optional<VetAnswer> find(UUID organisationId, UUID animalId, UUID id) {
        return rows.find(organisationId, animalId, id)
                .map(row -> read(organisationId, animalId, List.of(row)).get(0));
    }

    List<UUID> listAnimalsToVisit(UUID organisationId, LocalDate from) {
        return rows.listAnimalsToVisit(organisationId, from);
    }

    /** All of an animal, the one given first comes first. */
    List<VetAnswer> list(UUID organisationId, UUID animalId) {
        return read(organisationId, animalId, rows.listAll(organisationId, animalId)).stream()
                .sorted(VetAnswer.IN_ORDER)
                .toList();
    }

    /** Rows of an animal, in their order. */
    List<VetAnswer> read(UUID organisationId, UUID animalId, List<VetAnswerRow> given) {
        if (given.isEmpty()) {
            return List.of();
        }
        Map<UUID, ConfirmationRow> confirmed =
                confirmations
                        .list(
                                organisationId,
                                animalId,
                                given.stream().map(VetAnswerRow::id).toList())
                        .stream()
                        .collect(Collectors.toMap(row -> row.answerId, row -> row));
        return given.stream()
                .map(row -> read(row, Optional.ofNullable(confirmed.get(row.id()))))
                .toList();
    }

    private VetAnswer read(VetAnswerRow row, Optional<ConfirmationRow> confirmation) {
        return new VetAnswer(
                row.id(),
                row.animalId,
                row.answeredAt,
                row.recordedAt,
                row.seenUpTo,
                SawAnimal.find(row.sawAnimal).orElseThrow(),
                Optional.ofNullable(row.urgency),
                Optional.ofNullable(row.isolation),
                json.readValue(row.findings, FINDINGS).stream()
                        .map(kept -> new FindingVerdict(
                                Optional.ofNullable(kept.finding()),
                                VetAnswers.<Verdict>find(
                                        Verdict.values(), it -> it.code().equals(kept.verdict())),
                                Optional.ofNullable(kept.level()),
                                Optional.ofNullable(kept.words())))
                        .toList(),
                json.readValue(row.tests, TESTS).stream()
                        .map(kept -> new TestTaken(
                                kept.words(), Optional.ofNullable(kept.on()), Optional.ofNullable(kept.result())))
                        .toList(),
                Optional.ofNullable(row.instructions),
                json.readValue(row.rulings, RULINGS).stream()
                        .map(kept -> new CauseRuling(
                                kept.cause(),
                                VetAnswers.<Ruling>find(
                                        Ruling.values(), it -> it.code().equals(kept.ruling()))))
                        .toList(),
                Optional.ofNullable(row.quarantineUntil),
                Optional.ofNullable(row.approvesRelease),
                Optional.ofNullable(row.nextVisit),
                Optional.ofNullable(row.words),
                new Writer(
                        row.writerName, row.writerPractice, row.writerLicence, Optional.ofNullable(row.writerContact)),
                row.confirmedFromStart || confirmation.isPresent(),
                row.confirmedFromStart ? Optional.of(row.recordedAt) : confirmation.map(it -> it.recordedAt),
                confirmation.map(it -> it.recordedBy),
                Optional.ofNullable(row.supersedes),
                Optional.ofNullable(row.recordedBy),
                Optional.ofNullable(row.linkId));
    }

    private static <T> T find(T[] all, Predicate<T> which) {
        return Arrays.stream(all).filter(which).findFirst().orElseThrow();
    }
}
