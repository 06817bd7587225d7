package org.geneticsrules.json;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.probability.Probability;

/** The shape of what is recorded of one litter. */
final class LitterShape {

    private LitterShape() {}

    static Litter read(String id, Part part) {
        Part.Members members = part.members(
                "dam", "sire", "sires", "born", "bornCount", "scoredCount", "fosterDam", "kits", "ascertainment");
        Optional<Part> sire = members.optional("sire");
        Optional<Part> sires = members.optional("sires");
        if (sire.isPresent() && sires.isPresent()) {
            part.problems()
                    .add(
                            "unclear-sire",
                            part.pointer(),
                            "the litter states both a sire and candidates",
                            "either sire or sires");
        }
        Optional<Paternity> known = sire.flatMap(PedigreeShape::id).map(Paternity::of);
        Optional<Paternity> several = sires.flatMap(LitterShape::candidates);
        List<String> kits = new ArrayList<>();
        members.optional("kits")
                .ifPresent(list ->
                        list.items().forEach(kit -> PedigreeShape.id(kit).ifPresent(kits::add)));
        return new Litter(
                id,
                members.optional("dam").flatMap(PedigreeShape::id),
                known.or(() -> several).orElseGet(Paternity::unknown),
                members.optional("born").flatMap(PedigreeShape::date),
                count(members.optional("bornCount")),
                count(members.optional("scoredCount")),
                members.optional("fosterDam").flatMap(PedigreeShape::id),
                kits,
                members.optional("ascertainment")
                        .flatMap(AscertainmentShape::read)
                        .orElseGet(Ascertainment::unknown));
    }

    private static OptionalInt count(Optional<Part> part) {
        return part.flatMap(stated -> stated.amount(Integer.MAX_VALUE))
                .map(OptionalInt::of)
                .orElseGet(OptionalInt::empty);
    }

    private static Optional<Paternity> candidates(Part part) {
        Part.Members members = part.members("perKit", "candidates");
        Optional<Boolean> perKit = members.required("perKit").flatMap(Part::flag);
        List<Part> items =
                members.required("candidates").map(list -> list.items(1)).orElse(List.of());
        List<Paternity.Candidate> several = new ArrayList<>();
        Set<Object> seen = new LinkedHashSet<>();
        for (Part item : items) {
            candidate(item).ifPresent(candidate -> {
                if (!seen.add(List.of(candidate.male(), candidate.population()))) {
                    item.problems()
                            .add(
                                    "repeated-candidate",
                                    item.pointer(),
                                    "this candidate is named twice",
                                    "each male once");
                } else {
                    several.add(candidate);
                }
            });
        }
        if (several.size() < items.size() || several.isEmpty()) {
            return Optional.empty();
        }
        String total = Probability.total(
                several.stream().map(Paternity.Candidate::share).toList());
        if (!total.equals("1")) {
            part.problems()
                    .add(
                            "chances-sum",
                            part.pointer() + "/candidates",
                            "the shares sum to " + total,
                            "shares that sum to exactly 1");
            return Optional.empty();
        }
        return perKit.map(each -> new Paternity.Candidates(several, each));
    }

    private static Optional<Paternity.Candidate> candidate(Part part) {
        Part.Members members = part.members("male", "population", "share");
        Optional<Part> male = members.optional("male");
        Optional<Part> population = members.optional("population");
        if (male.isPresent() && population.isPresent()) {
            part.problems()
                    .add(
                            "unclear-candidate",
                            part.pointer(),
                            "the candidate is a recorded male and one who is not",
                            "either male or population");
            return Optional.empty();
        }
        Optional<String> id = male.flatMap(PedigreeShape::id);
        Optional<String> from = population.flatMap(PedigreeShape::id);
        Optional<Probability> share = members.required("share")
                .flatMap(chance -> ChanceShape.read(chance, "bad-chance").filter(value -> {
                    if (value.isZero()) {
                        chance.problems()
                                .add(
                                        "zero-chance",
                                        chance.pointer(),
                                        "the share is 0",
                                        "this left out, or a share above 0");
                    }
                    return !value.isZero();
                }));
        if (id.isPresent() != male.isPresent() || from.isPresent() != population.isPresent()) {
            return Optional.empty();
        }
        return share.map(chance -> new Paternity.Candidate(id, from, chance));
    }
}
