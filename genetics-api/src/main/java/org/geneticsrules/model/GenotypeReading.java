package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Sex;

/**
 * What a genotype text says, all its parts together.
 *
 * @param parts what it says of each locus that it names
 * @param phase what its brackets say
 * @param notices what its brackets say in vain
 */
record GenotypeReading(List<GenotypePart> parts, Phase phase, List<String> notices) {

    GenotypeReading {
        parts = ImmutableList.copyOf(parts);
        notices = ImmutableList.copyOf(notices);
    }

    /** Reads a text, or refuses it with every part that fails. */
    static GenotypeReading of(Model model, String text) {
        List<Problem> problems = new ArrayList<>();
        GenotypeParser parser = new GenotypeParser(model, text, problems);
        twice(parser.parts(), problems);
        sexes(parser.parts(), problems);
        groups(model, parser.brackets(), problems);
        if (!problems.isEmpty()) {
            problems.sort(Comparator.comparing(
                    problem -> problem.position().orElseThrow().column()));
            throw new ProblemsException(problems);
        }
        List<String> notices = new ArrayList<>();
        return new GenotypeReading(parser.parts(), phase(model, parser.brackets(), notices), notices);
    }

    /** The sexes of animals that can have such a genotype. */
    Set<Sex> sexes() {
        Set<Sex> sexes = new LinkedHashSet<>(List.of(Sex.values()));
        parts.forEach(part -> sexes.retainAll(part.sexes()));
        return sexes;
    }

    private static void twice(List<GenotypePart> parts, List<Problem> problems) {
        Set<String> seen = new LinkedHashSet<>();
        for (GenotypePart part : parts) {
            if (!seen.add(part.locus().id())) {
                problems.add(GenotypeText.at(
                        part.written().column(),
                        "locus-twice",
                        "locus " + part.locus().id() + " is named twice"));
            }
        }
    }

    /** Every part that contradicts the sex of which an earlier part speaks. */
    private static void sexes(List<GenotypePart> parts, List<Problem> problems) {
        Optional<GenotypePart> first =
                parts.stream().filter(part -> part.sexes().size() == 1).findFirst();
        if (first.isEmpty()) {
            return;
        }
        Set<Sex> sexes = first.get().sexes();
        for (GenotypePart part : parts) {
            if (!part.sexes().equals(sexes) && part.sexes().size() == 1) {
                problems.add(GenotypeText.at(
                                part.written().column(), "sexes-contradict", said(part) + ", but " + said(first.get()))
                        .expecting("a genotype that an animal of one sex can have"));
            }
        }
    }

    private static String said(GenotypePart part) {
        return "\"" + part.written() + "\" at locus " + part.locus().id() + " is that of a "
                + part.sexes().iterator().next().word();
    }

    /** Brackets hold loci of one group, and a group stands in one pair of brackets. */
    private static void groups(Model model, List<List<GenotypePart>> brackets, List<Problem> problems) {
        Set<String> stated = new LinkedHashSet<>();
        for (List<GenotypePart> bracket : brackets) {
            Optional<GenotypePart> first = bracket.stream()
                    .filter(part -> model.groupOf(part.locus().id()).isPresent())
                    .findFirst();
            if (first.isEmpty()) {
                continue; // nothing is linked here, so the brackets only mean nothing
            }
            LinkageGroup group = model.groupOf(first.get().locus().id()).orElseThrow();
            for (GenotypePart part : bracket) {
                if (!group.loci().contains(part.locus().id())) {
                    problems.add(GenotypeText.at(
                                    part.written().column(),
                                    "not-linked",
                                    "locus " + part.locus().id() + " is not in the linkage group " + group.id()
                                            + " of locus " + first.get().locus().id() + ", so they have no phase")
                            .expecting("it outside of these brackets"));
                }
            }
            if (!stated.add(group.id())) {
                problems.add(GenotypeText.at(
                                first.get().written().column(),
                                "phase-twice",
                                "loci of the linkage group " + group.id() + " stand in two pairs of brackets")
                        .expecting("one pair of brackets with all loci whose phase is known"));
            }
        }
    }

    private static Phase phase(Model model, List<List<GenotypePart>> brackets, List<String> notices) {
        Map<String, Phase.Strands> strands = new LinkedHashMap<>();
        for (List<GenotypePart> bracket : brackets) {
            List<String> loci = bracket.stream().map(part -> part.locus().id()).toList();
            if (loci.size() > 1
                    && loci.stream().noneMatch(locus -> model.groupOf(locus).isPresent())) {
                notices.add("phase was read but not kept: loci " + String.join(", ", loci) + " are not linked in model "
                        + model);
            }
            for (GenotypePart part : bracket) {
                part.strands().ifPresent(both -> strands.put(part.locus().id(), both));
                if (part.strands().isEmpty()
                        && part.pairs().size() > 1
                        && model.groupOf(part.locus().id()).isPresent()) {
                    notices.add("the phase of locus " + part.locus().id()
                            + " was read but not kept: one of its alleles is not known");
                }
            }
        }
        return Phase.of(model, strands);
    }
}
