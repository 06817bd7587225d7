package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;
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
                Arguments.of("empty-group", builder().group(LinkageGroup.autosomal("g", List.of(), List.of()))),
                Arguments.of(
                        "dominance-in-part",
                        builder().locus("L", locus -> locus.alleles("L").in(Sex.MALE, male -> male.shows("L", "x")))),
                Arguments.of(
                        "dominance-in-part",
                        builder()
                                .locus(
                                        "L",
                                        locus -> locus.alleles("L")
                                                .shows("L", "x")
                                                .in(Sex.MALE, male -> male.shows("L", "x"))
                                                .in(Sex.FEMALE, female -> female.shows("L", "x")))),
                Arguments.of("too-many-intervals", manyLoci(32)),
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
    void a_catalogue_without_id_or_states_or_with_a_season_twice_is_refused() {
        assertEquals(List.of("blank-id"), codes(() -> Catalogue.builder("", "1").build()));
        assertEquals(
                List.of("no-states"),
                codes(() -> Catalogue.builder("c", "1").trait("hue").build()));
        assertEquals(
                List.of("duplicate-light"),
                codes(() -> Catalogue.builder("c", "1").lights("dusk", "dusk").build()));
        assertEquals(
                List.of("duplicate-season"),
                codes(() ->
                        Catalogue.builder("c", "1").seasons("winter", "winter").build()));
    }

    /** A group with crossovers of so many loci. */
    private static ModelBuilder manyLoci(int count) {
        List<String> loci = IntStream.range(0, count).mapToObj(i -> "L" + i).toList();
        ModelBuilder builder = builder();
        loci.forEach(id -> builder.locus(id, locus -> locus.alleles("A").shows("A", "x")));
        return builder.group(LinkageGroup.of(
                "g", Transmission.AUTOSOMAL, loci, new Recombination.Crossovers(Map.of("none", Probability.ONE))));
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
