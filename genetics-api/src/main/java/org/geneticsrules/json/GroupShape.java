package org.geneticsrules.json;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.MapFunction;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/** The shape of a linkage group. A map is turned into recombination fractions here, once. */
final class GroupShape {

    private static final List<String> WAYS = List.of("recombination", "map", "crossovers");

    private final Part part;
    private final Limits limits;

    GroupShape(Part part, Limits limits) {
        this.part = part;
        this.limits = limits;
    }

    LinkageGroup read(String id) {
        Part.Members members =
                part.members("title", "transmission", "loci", "recombination", "map", "crossovers", "evidence");
        Transmission transmission = members.optional("transmission")
                .flatMap(way -> way.word("transmission", Transmission::of, Transmission.words()))
                .orElse(Transmission.AUTOSOMAL);
        List<String> loci = members.required("loci")
                .map(list -> {
                    List<String> names = list.texts(1);
                    list.tooMany(names.size(), "loci", limits.loci());
                    return names;
                })
                .orElse(List.of());
        return new LinkageGroup(
                id,
                members.optional("title").flatMap(Part::text),
                transmission,
                loci,
                recombination(members, loci),
                members.optional("evidence").flatMap(Part::text));
    }

    /** None where nothing is stated; the model's own checks tell whether something had to be. */
    private static Recombination recombination(Part.Members members, List<String> loci) {
        List<Part> stated =
                WAYS.stream().flatMap(key -> members.optional(key).stream()).toList();
        if (stated.size() > 1) {
            members.owner()
                    .problems()
                    .add(
                            "unclear-recombination",
                            members.owner().pointer(),
                            "the linkage group states " + stated.size() + " of " + String.join(", ", WAYS),
                            "at most one of them");
        }
        Optional<Recombination> crossovers =
                members.optional("crossovers").map(ChanceShape::byName).map(Recombination.Crossovers::new);
        Optional<Recombination> fractions =
                members.optional("recombination").map(part -> bySex(part, part.isObject(), GroupShape::fractions));
        Optional<Recombination> map = members.optional("map").map(part -> map(part, loci));
        return fractions.or(() -> map).or(() -> crossovers).orElse(Recombination.Fractions.of(List.of()));
    }

    private static List<Probability> fractions(Part part) {
        List<Probability> fractions = new ArrayList<>();
        part.items().forEach(item -> ChanceShape.read(item, "bad-fraction").ifPresent(fractions::add));
        return fractions;
    }

    /** One list for both sexes, or one for each. */
    private static Recombination bySex(Part part, boolean each, Function<Part, List<Probability>> read) {
        if (!each) {
            return Recombination.Fractions.of(read.apply(part));
        }
        Part.Members members = part.members("male", "female");
        Map<Sex, List<Probability>> lists = new EnumMap<>(Sex.class);
        for (Sex sex : Sex.values()) {
            lists.put(sex, members.required(sex.word()).map(read).orElse(List.of()));
        }
        return new Recombination.Fractions(
                lists.getOrDefault(Sex.FEMALE, List.of()), lists.getOrDefault(Sex.MALE, List.of()));
    }

    private static Recombination map(Part part, List<String> loci) {
        Part.Members members = part.members("function", "positions");
        Optional<MapFunction> function = members.required("function")
                .flatMap(word -> word.word("map function", MapFunction::of, MapFunction.words()));
        return members.required("positions")
                .map(positions -> bySex(
                        positions,
                        positions.entries().values().stream().anyMatch(Part::isObject),
                        each -> intervals(each, loci, function)))
                .orElse(Recombination.Fractions.of(List.of()));
    }

    /** The fractions between neighbours, whose positions ascend in the order in which the group lists them. */
    private static List<Probability> intervals(Part part, List<String> loci, Optional<MapFunction> function) {
        Map<String, Part> positions = part.entries();
        positions.forEach((locus, position) -> {
            if (!loci.contains(locus)) {
                part.problems().unknown("unknown-locus", position.pointer(), "locus of this group", locus, loci);
            }
        });
        List<Probability> fractions = new ArrayList<>();
        Optional<BigDecimal> before = Optional.empty();
        for (int i = 0; i < loci.size(); i++) {
            String locus = loci.get(i);
            Optional<Part> stated = Optional.ofNullable(positions.get(locus));
            if (stated.isEmpty() && part.isObject()) {
                part.problems()
                        .add(
                                "missing-position",
                                part.pointer(),
                                "the map gives no position of locus " + locus,
                                "a position for each of " + String.join(", ", loci));
            }
            Optional<BigDecimal> here = stated.flatMap(Part::number);
            if (before.isPresent() && here.isPresent()) {
                BigDecimal distance = here.get().subtract(before.get());
                if (distance.signum() <= 0) {
                    part.problems()
                            .add(
                                    "map-order",
                                    stated.get().pointer(),
                                    "locus " + locus + " lies at " + here.get() + " cM, not beyond "
                                            + loci.get(i - 1) + " at " + before.get()
                                            + " cM, which the group lists before it",
                                    "positions that ascend in the order " + String.join(", ", loci));
                } else {
                    function.ifPresent(way -> fractions.add(way.fraction(distance)));
                }
            }
            before = here;
        }
        return fractions;
    }
}
