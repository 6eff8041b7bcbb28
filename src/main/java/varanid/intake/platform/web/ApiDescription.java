package varanid.intake.platform.web;

import io.swagger.v3.core.converter.ModelConverters;
import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.info.License;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.JsonSchema;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.parameters.Parameter;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;
import io.swagger.v3.oas.models.security.SecurityRequirement;
import io.swagger.v3.oas.models.security.SecurityScheme;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.springdoc.core.customizers.OperationCustomizer;
import org.springdoc.core.utils.SpringDocUtils;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.info.BuildProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.web.method.HandlerMethod;

/** The parts of the API's description that every operation shares: token, headers, pages, problems. */
@Configuration(proxyBeanMethods = false)
class ApiDescription {

    static {
        SpringDocUtils.getConfig().addRequestWrapperToIgnore(Caller.class, Query.class, IfMatch.class);
    }

    @Bean
    OpenAPI description(ObjectProvider<BuildProperties> build) {
        Components components = new Components()
                .addSecuritySchemes(
                        "token",
                        new SecurityScheme()
                                .type(SecurityScheme.Type.HTTP)
                                .scheme("bearer")
                                .description("A token of a person, made at /api/v1/tokens"));
        ModelConverters.getInstance(true).readAll(Problem.class).forEach(components::addSchemas);
        return new OpenAPI()
                .info(new Info()
                        .title("Varanid Intake")
                        .version(build.stream()
                                .map(BuildProperties::getVersion)
                                .findFirst()
                                .orElse("0.1.0"))
                        .description("How soon a newly taken-in monitor lizard needs a vet, how it is kept apart, and"
                                + " why. Weights are set by experts and not validated; it is not a diagnosis, a licensed"
                                + " vet decides.")
                        .license(new License().name("Apache-2.0").identifier("Apache-2.0")))
                .components(components)
                .addSecurityItem(new SecurityRequirement().addList("token"));
    }

    @Bean
    OperationCustomizer sharedManners() {
        return (operation, method) -> {
            List<Class<?>> parameters = Arrays.stream(method.getMethodParameters())
                    .<Class<?>>map(parameter -> parameter.getParameterType())
                    .toList();
            boolean hasFile = parameters.contains(FileUpload.class);
            boolean hasBody = hasFile || parameters.contains(JsonRequest.class);
            boolean changes = parameters.contains(IfMatch.class);
            boolean pages = isPaged(method);
            if (operation.getResponses() == null) {
                operation.setResponses(new ApiResponses());
            }
            problem(operation, "401", "No valid token");
            problem(operation, "422", "All faults of the request, each with its place");
            if (operation.getParameters() != null
                    && operation.getParameters().stream().anyMatch(each -> "path".equals(each.getIn()))) {
                problem(operation, "404", "Not there, or another organisation's");
            }
            if (hasBody) {
                problem(operation, "400", hasFile ? "No form data, a part twice" : "Not JSON, a name twice, too deep");
                problem(operation, "403", "The token's person may not do this");
                problem(operation, "413", hasFile ? "A file that is too large" : "More than 256 KiB");
                problem(operation, "415", hasFile ? "Not multipart/form-data" : "Not application/json in UTF-8");
            }
            if (changes) {
                header(operation, "If-Match", true, "The ETag of the version that was read");
                problem(operation, "412", "Changed since it was read");
                problem(operation, "428", "Without If-Match");
            } else if (hasBody) {
                header(
                        operation,
                        "Idempotency-Key",
                        false,
                        "Any text of 1 to 200 visible ASCII characters, such as a UUID. The same request with the same"
                                + " key within 24 hours gets the same reply, with Idempotency-Replayed: true");
                problem(operation, "409", "The first request with this key has not ended");
            }
            if (pages) {
                query(
                        operation,
                        "limit",
                        schema("integer")
                                .minimum(BigDecimal.ONE)
                                .maximum(BigDecimal.valueOf(Query.HIGHEST_LIMIT))
                                ._default(Query.DEFAULT_LIMIT),
                        "How many");
                query(operation, "cursor", schema("string"), "Where the page before ended; from its Link header");
            }
            operation.setOperationId(operationId(method));
            replyHeaders(operation, pages, changes);
            return operation;
        };
    }

    /** The type in the way of OpenAPI 3.1, which is that of JSON Schema. */
    private static Schema<Object> schema(String type) {
        return new JsonSchema().types(Set.of(type));
    }

    /** Names that stay when another operation is added: the thing and what is done with it. */
    private static String operationId(HandlerMethod method) {
        String thing = method.getBeanType().getSimpleName().replaceAll("Controller.*", "");
        String action = method.getMethod().getName();
        return thing.substring(0, 1).toLowerCase(Locale.ROOT) + thing.substring(1) + "." + action;
    }

    private static boolean isPaged(HandlerMethod method) {
        return method.getMethod().getGenericReturnType().getTypeName().contains(Items.class.getName());
    }

    private static void replyHeaders(Operation operation, boolean pages, boolean changes) {
        operation.getResponses().forEach((status, response) -> {
            if (status.startsWith("2")) {
                if (pages) {
                    header(response, "Link", "RFC 8288: rel=\"first\", and rel=\"next\" where there is more");
                }
                if (changes) {
                    header(response, "ETag", "The new version");
                }
                if (status.equals("201")) {
                    header(response, "Location", "The path of the new thing");
                }
            }
        });
    }

    private static void header(ApiResponse response, String name, String description) {
        response.addHeaderObject(name, new Header().description(description).schema(schema("string")));
    }

    private static void header(Operation operation, String name, boolean required, String description) {
        operation.addParametersItem(new Parameter()
                .in("header")
                .name(name)
                .required(required)
                .description(description)
                .schema(schema("string")));
    }

    private static void query(Operation operation, String name, Schema<?> schema, String description) {
        operation.addParametersItem(
                new Parameter().in("query").name(name).description(description).schema(schema));
    }

    private static void problem(Operation operation, String status, String description) {
        Schema<?> schema = new Schema<Object>().$ref("#/components/schemas/Problem");
        operation
                .getResponses()
                .addApiResponse(
                        status,
                        new ApiResponse()
                                .description(description)
                                .content(new Content()
                                        .addMediaType(Problem.MEDIA_TYPE, new MediaType().schema(schema))));
    }
}
