package org.geneticsrules.linkage;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Ways of handing down, which are textbook knowledge (common practice). */
class TransmissionTest {

    @ParameterizedTest
    @CsvSource({
        // strands of females and males, then what daughters and sons have from the dam and from the sire
        "AUTOSOMAL, 2, 2, both, both",
        "X, 2, 1, both, dam",
        "Y, 0, 1, none, sire",
        "Z, 1, 2, sire, both",
        "W, 1, 0, dam, none",
        "MATERNAL, 1, 1, dam, dam"
    })
    void strands_and_where_they_come_from(Transmission way, int females, int males, String daughters, String sons) {
        assertEquals(females, way.strands(Sex.FEMALE));
        assertEquals(males, way.strands(Sex.MALE));
        assertEquals(daughters, from(way, Sex.FEMALE));
        assertEquals(sons, from(way, Sex.MALE));
    }

    private static String from(Transmission way, Sex kit) {
        boolean dam = way.passes(Sex.FEMALE, kit);
        boolean sire = way.passes(Sex.MALE, kit);
        return dam ? (sire ? "both" : "dam") : (sire ? "sire" : "none");
    }

    @ParameterizedTest
    @EnumSource(Transmission.class)
    void a_kit_has_as_many_strands_as_parents_hand_down_and_no_parent_hands_down_what_it_lacks(Transmission way) {
        for (Sex kit : Sex.values()) {
            long handed = Stream.of(Sex.values())
                    .filter(parent -> way.passes(parent, kit))
                    .peek(parent -> assertEquals(true, way.strands(parent) > 0))
                    .count();
            assertEquals(way.strands(kit), handed);
        }
    }

    @ParameterizedTest
    @EnumSource(Transmission.class)
    void the_heterogametic_sex_has_fewer_strands_or_the_only_one(Transmission way) {
        assertEquals(
                way.strands(Sex.FEMALE) != way.strands(Sex.MALE),
                way.heterogametic().isPresent());
        way.heterogametic().ifPresent(sex -> assertEquals(1, way.strands(sex)));
        assertEquals(
                way.heterogametic().isPresent() && way.recombines(),
                way.partner().isPresent());
    }

    @ParameterizedTest
    @EnumSource(Transmission.class)
    void a_way_is_found_by_its_word(Transmission way) {
        assertEquals(Optional.of(way), Transmission.of(way.word()));
    }

    @Test
    void words_and_partners() {
        assertEquals(List.of("autosomal", "X", "Y", "Z", "W", "maternal"), Transmission.words());
        assertEquals(Optional.empty(), Transmission.of("x"));
        assertEquals(Optional.of("Y"), Transmission.X.partner());
        assertEquals(Optional.of("W"), Transmission.Z.partner());
    }
}
