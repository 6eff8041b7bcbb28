package varanid.intake.vet;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.Looks;
import varanid.intake.assessment.ReadLook;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.share.OpenedLink;

/** What somebody with a reply link is shown and sends. */
@Service
class Replies {

    private final VetAnswers answers;
    private final Recommendations recommendations;
    private final Looks looks;
    private final Animals animals;
    private final Terms terms;
    private final OrganisationLock lock;
    private final Clock clock;

    Replies(
            VetAnswers answers,
            Recommendations recommendations,
            Looks looks,
            Animals animals,
            Terms terms,
            OrganisationLock lock,
            Clock clock) {
        this.answers = answers;
        this.recommendations = recommendations;
        this.looks = looks;
        this.animals = animals;
        this.terms = terms;
        this.lock = lock;
        this.clock = clock;
    }

    /**
     * What is known of the animal.
     *
     * @param at everything recorded up to then was there to be read, and nothing that is recorded later bears that moment
     */
    record Known(Instant at, Animals.Newcomer animal, Optional<ReadLook> look, Recommendation holds) {}

    @Transactional
    Known known(OpenedLink link) {
        // A look takes its moment under the lock and is seen by others only after. Without the lock, one could be
        // recorded
        // before the moment of the page and not be on it, and the answer would stand above what its writer never saw.
        lock.hold(link.organisationId());
        Present present = Present.at(clock, link.zone());
        return new Known(
                present.now(),
                animals.find(link.organisationId(), link.animalId())
                        .orElseThrow(() -> ProblemException.notFound("animal")),
                looks.findLatestRead(link.organisationId(), link.animalId(), present.today()),
                recommendations.find(link.organisationId(), link.zone(), link.animalId(), present.today()));
    }

    /** @throws ProblemException 422 with every fault */
    @Transactional
    VetAnswers.Kept keep(OpenedLink link, JsonRequest request) {
        Optional<VetAnswers.Sent> sent = request.key()
                .map(key -> new VetAnswers.Sent(sha256(key), HexFormat.of().formatHex(request.hash())));
        return answers.keep(link, read(link, request), sent, true);
    }

    /**
     * @param key that the form was given out with: sent twice, it is kept once
     * @throws ProblemException 422 with every fault
     */
    @Transactional
    VetAnswers.Kept keep(OpenedLink link, AnswerForm form, String key) {
        NewAnswer answer = read(link, JsonRequest.written(form.document()));
        Optional<VetAnswers.Sent> sent = Optional.of(
                new VetAnswers.Sent(sha256(key), sha256(form.document().toString())));
        // Who goes back, changes something and sends again means another answer, with the same key.
        return answers.keep(link, answer, sent, false);
    }

    /** An answer that came by this link. */
    @Transactional(readOnly = true)
    Optional<VetAnswer> find(OpenedLink link, UUID answerId) {
        return answers.find(link.organisationId(), link.animalId(), answerId)
                .filter(answer -> answer.linkId().filter(link.linkId()::equals).isPresent());
    }

    private NewAnswer read(OpenedLink link, JsonRequest request) {
        Present present = Present.at(clock, link.zone());
        return request.read(fields -> NewAnswer.reader(fields, terms, present));
    }

    private static String sha256(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
