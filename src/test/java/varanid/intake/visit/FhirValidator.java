package varanid.intake.visit;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.ConceptValidationOptions;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.context.support.IValidationSupport;
import ca.uhn.fhir.context.support.ValidationSupportContext;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import ca.uhn.fhir.validation.SingleValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.SnapshotGeneratingValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeSystem;
import org.hl7.fhir.r4.model.Enumerations;
import org.hl7.fhir.r4.model.Questionnaire;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import varanid.intake.checklist.Catalogue;
import varanid.intake.scoring.ChecklistDraft;

/**
 * Holds documents against the definitions of FHIR R4, with a validator that others wrote.
 *
 * <p>It knows nothing of our form. Of ours it is told what a receiver could be told: the codes of our own systems, made
 * from the same data files that the service reads, our one extension, and the questionnaires that a document brings.
 * Nothing is fetched from the net.
 */
final class FhirValidator {

    private static @Nullable FhirValidator shared;

    private final FhirContext context = FhirContext.forR4();
    private final Ours ours = new Ours();
    private final ca.uhn.fhir.validation.FhirValidator validator;

    private FhirValidator() {
        FhirInstanceValidator instances = new FhirInstanceValidator(new ValidationSupportChain(
                new DefaultProfileValidationSupport(context),
                ours,
                new CommonCodeSystemsTerminologyService(context),
                new InMemoryTerminologyServerValidationSupport(context),
                new SnapshotGeneratingValidationSupport(context)));
        instances.setErrorForUnknownProfiles(true);
        instances.setAnyExtensionsAllowed(false);
        validator = context.newValidator().registerValidatorModule(instances);
    }

    /** One for all tests: reading the definitions takes seconds. */
    static synchronized FhirValidator shared() {
        FhirValidator it = shared;
        if (it == null) {
            it = new FhirValidator();
            shared = it;
        }
        return it;
    }

    /** What it says from warnings upward: severity, place and message, in its own words. */
    List<String> complaints(byte[] document) {
        String text = new String(document, StandardCharsets.UTF_8);
        ours.remember(parse(document));
        return validator.validateWithResult(text).getMessages().stream()
                .filter(message -> message.getSeverity().ordinal() >= ResultSeverityEnum.WARNING.ordinal())
                .map(FhirValidator::shown)
                .toList();
    }

    Bundle parse(byte[] document) {
        return context.newJsonParser().parseResource(Bundle.class, new String(document, StandardCharsets.UTF_8));
    }

    private static String shown(SingleValidationMessage message) {
        return message.getSeverity().getCode().toLowerCase(Locale.ROOT) + " at " + message.getLocationString() + ": "
                + message.getMessage();
    }

    static Catalogue catalogue() {
        try (AnnotationConfigApplicationContext context = new AnnotationConfigApplicationContext(Catalogue.class)) {
            return context.getBean(Catalogue.class);
        }
    }

    /** Our own codes, extension and questionnaires. */
    private final class Ours implements IValidationSupport {

        private final Map<String, Set<String>> codes = new TreeMap<>();
        private final Map<String, Questionnaire> questionnaires = new HashMap<>();
        private final StructureDefinition extension;

        Ours() {
            codes.put(FhirCode.BASIS, new TreeSet<>());
            Stream.of(Basis.values()).forEach(basis -> add(FhirCode.BASIS, basis.code()));
            Stream.of(Part.values()).forEach(part -> add(FhirCode.PART, part.code()));
            add(FhirCode.PART, "standing");
            add(FhirCode.PART, "notices");
            add(FhirCode.ISOLATION, "standard");
            add(FhirCode.ISOLATION, "strict");
            catalogue().list().forEach(edition -> addAll(edition.checklist().draft()));
            try (InputStream in = Objects.requireNonNull(
                    FhirValidator.class.getResourceAsStream("/shared/fhir/answer-reading.json"))) {
                extension = context.newJsonParser().parseResource(StructureDefinition.class, in);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        private void addAll(ChecklistDraft draft) {
            draft.findings().forEach(finding -> {
                add(FhirCode.FINDING, finding.id());
                finding.levels().forEach(level -> add(FhirCode.LEVEL + finding.id(), level.code()));
            });
            draft.attributes()
                    .forEach(attribute -> attribute
                            .values()
                            .forEach(value -> add(FhirCode.ATTRIBUTE + attribute.id(), value.code())));
            draft.conditions().forEach(condition -> add(FhirCode.CONDITION, condition.id()));
        }

        private void add(String system, String code) {
            codes.computeIfAbsent(system, any -> new TreeSet<>()).add(code);
        }

        void remember(Bundle document) {
            document.getEntry().stream()
                    .map(Bundle.BundleEntryComponent::getResource)
                    .filter(Questionnaire.class::isInstance)
                    .map(Questionnaire.class::cast)
                    .forEach(it -> questionnaires.put(it.getUrl() + "|" + it.getVersion(), it));
        }

        @Override
        public FhirContext getFhirContext() {
            return context;
        }

        @Override
        public <T extends IBaseResource> @Nullable T fetchResource(@Nullable Class<T> type, String uri) {
            if (type != null && type.equals(Questionnaire.class)) {
                return type.cast(questionnaires.get(uri));
            }
            return null;
        }

        @Override
        public @Nullable IBaseResource fetchStructureDefinition(String url) {
            return url.equals(FhirCode.ANSWER_READING) ? extension : null;
        }

        @Override
        public <T extends IBaseResource> @Nullable List<T> fetchAllNonBaseStructureDefinitions() {
            return null;
        }

        @Override
        public boolean isCodeSystemSupported(ValidationSupportContext root, String system) {
            return system != null && system.startsWith(FhirCode.OURS);
        }

        @Override
        public @Nullable IBaseResource fetchCodeSystem(String system) {
            Set<String> known = codes.get(system);
            if (known == null) {
                return null;
            }
            CodeSystem answer = new CodeSystem();
            answer.setUrl(system);
            answer.setStatus(Enumerations.PublicationStatus.ACTIVE);
            answer.setContent(CodeSystem.CodeSystemContentMode.COMPLETE);
            known.forEach(code -> answer.addConcept().setCode(code));
            return answer;
        }

        /** Statements, alerts and species are open lists: any code of the right form is one. */
        @Override
        public @Nullable CodeValidationResult validateCode(
                ValidationSupportContext root,
                ConceptValidationOptions options,
                String system,
                String code,
                String display,
                String valueSet) {
            if (system == null || !system.startsWith(FhirCode.OURS)) {
                return null;
            }
            Set<String> open = Set.of(FhirCode.STATEMENT, FhirCode.ALERT, FhirCode.SPECIES);
            Set<String> known = codes.getOrDefault(system, Set.of());
            boolean right = known.contains(code) || open.contains(system);
            CodeValidationResult result = new CodeValidationResult();
            return right
                    ? result.setCode(code)
                    : result.setSeverity(IssueSeverity.ERROR).setMessage("no code of " + system + ": " + code);
        }
    }

    /** Resources of one kind, in the order of the document. */
    static <T> List<T> all(Bundle document, Class<T> type) {
        List<T> found = new ArrayList<>();
        document.getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .filter(type::isInstance)
                .map(type::cast)
                .forEach(found::add);
        return found;
    }
}
