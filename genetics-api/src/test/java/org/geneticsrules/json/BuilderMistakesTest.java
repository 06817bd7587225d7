package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Mistakes that no file can make, because its shape or its keys already exclude them, but that a program can. */
class BuilderMistakesTest {

    static Stream<Arguments> models() {
        return Stream.of(
                Arguments.of("blank-id", Model.builder(" ", "1", Samples.catalogue())),
                Arguments.of("blank-id", Model.builder("m", "", Samples.catalogue())),
                Arguments.of(
                        "duplicate-id",
                        builder().mask(Mask.of("m", Condition.always())).mask(Mask.of("m", Condition.always()))),
                Arguments.of("no-alleles", builder().locus("L", locus -> locus.expressions("x"))),
                Arguments.of("no-states", builder().trait("t", trait -> trait.inner())),
                Arguments.of(
                        "duplicate-case",
                        builder()
                                .trait(
                                        "eye",
                                        trait -> trait.when(Condition.always(), "pink")
                                                .when(Condition.always(), "pink"))),
                Arguments.of(
                        "reserved-name",
                        builder()
                                .trait(
                                        "eye",
                                        trait -> trait.when(new Case(
                                                        "otherwise", Condition.always(), "pink", Optional.empty()))
                                                .otherwise("pink"))),
                Arguments.of("bad-name", builder().mask(Mask.of("x-mask", Condition.always()))));
    }

    @ParameterizedTest
    @MethodSource("models")
    void a_builder_refuses_what_no_document_could_hold(String code, ModelBuilder builder) {
        List<String> found = codes(builder::build);
        assertTrue(found.contains(code), found::toString);
    }

    @Test
    void a_catalogue_without_id_or_states_is_refused() {
        assertEquals(List.of("blank-id"), codes(() -> Catalogue.builder("", "1").build()));
        assertEquals(
                List.of("no-states"),
                codes(() -> Catalogue.builder("c", "1").trait("hue").build()));
    }

    private static ModelBuilder builder() {
        return Model.builder("m", "1", Samples.catalogue());
    }

    private static List<String> codes(Executable build) {
        return assertThrows(ProblemsException.class, build).problems().stream()
                .map(problem -> problem.code())
                .toList();
    }
}
