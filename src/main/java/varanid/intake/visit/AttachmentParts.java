package varanid.intake.visit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import varanid.intake.attachment.Attachments;
import varanid.intake.attachment.KeptAttachment;
import varanid.intake.platform.time.ReaderDates;

/** Which photographs and laboratory reports there are, of what and from when. They themselves are not on the page. */
@Configuration(proxyBeanMethods = false)
class AttachmentParts {

    /** Of each part; older ones are counted. */
    private static final int MOST_NAMED = 12;

    @Bean
    PartReader attachmentsOfFindings(Attachments attachments, LatestLook looks, Names names, HandOverTexts texts) {
        return new Attached(Part.FINDINGS, attachments, looks, names, texts);
    }

    @Bean
    PartReader attachmentsOfSamples(Attachments attachments, LatestLook looks, Names names, HandOverTexts texts) {
        return new Attached(Part.SAMPLES, attachments, looks, names, texts);
    }

    private record Attached(Part part, Attachments attachments, LatestLook looks, Names names, HandOverTexts texts)
            implements PartReader {

        @Override
        public List<Statement> read(Visit visit) {
            List<KeptAttachment> all = attachments.list(visit.organisationId(), visit.animalId()).stream()
                    .filter(each -> each.sampleId().isPresent() == (part == Part.SAMPLES))
                    .toList();
            List<Statement> said = new ArrayList<>();
            all.stream().skip(Math.max(0, all.size() - MOST_NAMED)).forEach(each -> said.add(statement(visit, each)));
            if (all.size() > MOST_NAMED) {
                said.add(Statement.of(
                                "more-attachments",
                                Basis.RECORDED,
                                texts.label("more-attachments"),
                                texts.say("more-attachments", "count", Integer.toString(all.size() - MOST_NAMED)))
                        .weighing(Statement.Weight.SMALL));
            }
            return said;
        }

        private Statement statement(Visit visit, KeptAttachment each) {
            String about = Stream.of(
                            each.content().pages().map(count -> texts.say("pages", "count", Integer.toString(count))),
                            each.assessmentId().flatMap(look -> lookDay(visit, look)),
                            each.takenAt().isPresent() ? Optional.<String>empty() : Optional.of(texts.say("added")))
                    .flatMap(Optional::stream)
                    .collect(Collectors.joining("; "));
            Statement statement = Statement.of(
                            "attachment",
                            Basis.RECORDED,
                            label(each),
                            each.caption().orElse(texts.say("no-caption")))
                    .at(each.takenAt().orElse(each.recordedAt()))
                    .by(names.of(visit, each.recordedBy()))
                    .qualified(about.isEmpty() ? null : about)
                    .weighing(Statement.Weight.SMALL);
            return each.finding()
                    .map(finding -> statement.coded("finding", finding, null))
                    .orElse(statement);
        }

        private String label(KeptAttachment each) {
            if (!each.content().isPicture()) {
                return texts.label("laboratory-report");
            }
            return each.finding()
                    .map(finding -> texts.label("photograph-of").replace("{finding}", HandOverTexts.plain(finding)))
                    .orElse(texts.label("photograph"));
        }

        private Optional<String> lookDay(Visit visit, UUID lookId) {
            return looks.list(visit).stream()
                    .filter(look -> look.kept().id().equals(lookId))
                    .findFirst()
                    .map(look -> texts.say(
                            "of-look",
                            "day",
                            ReaderDates.PAPER.shortDay(look.kept().localDate())));
        }
    }
}
