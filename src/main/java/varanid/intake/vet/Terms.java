package varanid.intake.vet;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.assessment.SignWords;
import varanid.intake.checklist.Catalogue;
import varanid.intake.checklist.Edition;
import varanid.intake.platform.reference.ReferenceFile;
import varanid.intake.scoring.ChecklistDraft;

/** What an answer may name: the findings and levels of every checklist, and the causes of the quarantine clock. */
@Component
class Terms {

    private static final String POLICY = "/shared/reference/quarantine-policy.yaml";

    private final Map<String, List<String>> levels;
    private final Map<String, String> signs = new LinkedHashMap<>();
    private final Map<String, String> causes;

    Terms(Catalogue catalogue) {
        Map<String, Set<String>> all = new LinkedHashMap<>();
        for (Edition edition : catalogue.list()) {
            for (ChecklistDraft.Finding finding : edition.checklist().draft().findings()) {
                for (ChecklistDraft.Level level : finding.levels()) {
                    all.computeIfAbsent(finding.id(), id -> new LinkedHashSet<>())
                            .add(level.code());
                    signs.put(finding.id() + " " + level.code(), SignWords.tell(finding, level));
                }
            }
        }
        Map<String, List<String>> known = new LinkedHashMap<>();
        all.forEach((finding, codes) -> known.put(finding, List.copyOf(codes)));
        this.levels = known;
        this.causes = readCauses();
    }

    private static Map<String, String> readCauses() {
        return ReferenceFile.read(POLICY, file -> {
            Map<String, String> causes = new LinkedHashMap<>();
            for (JsonNode cause : new YAMLMapper().readTree(file).path("causes")) {
                causes.put(cause.path("id").stringValue(), cause.path("label").stringValue());
            }
            return causes;
        });
    }

    boolean isFinding(String id) {
        return levels.containsKey(id);
    }

    /** The codes of its levels in any version, the reassuring one first. */
    List<String> levels(String finding) {
        return Optional.ofNullable(levels.get(finding)).orElse(List.of());
    }

    /** A finding, and what was seen of it in the newest version's words. */
    String tell(String finding, Optional<String> level) {
        return level.flatMap(code -> Optional.ofNullable(signs.get(finding + " " + code)))
                .orElseGet(() -> SignWords.name(finding));
    }

    List<String> causes() {
        return List.copyOf(causes.keySet());
    }

    /** What a cause is, for people. */
    String causeLabel(String id) {
        return Optional.ofNullable(causes.get(id)).orElse(id);
    }
}
