package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.PlainWords;
import org.geneticsrules.trait.Sex;

/** Checks linkage groups: their names, their loci, and how often neighbours are separated. */
final class GroupChecks {

    private static final Probability HALF = Probability.of(1, 2);

    private final ModelBuilder model;
    private final Problems problems;

    GroupChecks(ModelBuilder model, Problems problems) {
        this.model = model;
        this.problems = problems;
    }

    /** Names, and alleles that genotype text could not tell from the partner chromosome. */
    void shape() {
        for (LinkageGroup group : model.groups.values()) {
            PlainWords.check(group.id(), "linkage group", group.pointer(), problems);
            if (group.loci().isEmpty()) {
                problems.add(
                        "empty-group",
                        group.pointer() + "/loci",
                        "linkage group \"" + group.id() + "\" has no loci",
                        "at least one locus");
            }
            NameChecks.unique(group.loci(), "locus", group.pointer() + "/loci", problems);
            group.transmission()
                    .partner()
                    .ifPresent(partner -> group.loci().forEach(locus -> partnerIsNoAllele(locus, partner)));
        }
    }

    private void partnerIsNoAllele(String name, String partner) {
        LocusBuilder locus = model.loci.get(name);
        if (locus == null) {
            return; // reported among the references
        }
        for (Allele allele : locus.alleles.values()) {
            if (allele.spellings().contains(partner)) {
                problems.add(
                        "reserved-symbol",
                        Pointer.of("loci", name, "alleles"),
                        "\"" + partner + "\" at locus " + name
                                + " would mean both an allele and the partner chromosome in genotype text",
                        "another symbol");
            }
        }
    }

    /** Loci that exist, each in one group at most. */
    void references() {
        Map<String, String> groupOf = new LinkedHashMap<>();
        for (LinkageGroup group : model.groups.values()) {
            for (int i = 0; i < group.loci().size(); i++) {
                String locus = group.loci().get(i);
                String at = group.pointer() + "/loci/" + i;
                if (!model.loci.containsKey(locus)) {
                    problems.unknown("unknown-locus", at, "locus", locus, model.loci.keySet());
                }
                String other = groupOf.putIfAbsent(locus, group.id());
                if (other != null) {
                    problems.add(
                            "locus-in-two-groups",
                            at,
                            "locus " + locus + " is in the linkage groups \"" + other + "\" and \"" + group.id() + "\"",
                            "at most one group for each locus");
                }
            }
            if (group.recombination() instanceof Recombination.Crossovers table) {
                table.patterns().keySet().forEach(pattern -> pattern(group, pattern));
            }
        }
    }

    private void pattern(LinkageGroup group, String pattern) {
        if (group.recombining(pattern).isPresent()) {
            return;
        }
        Set<String> known = new LinkedHashSet<>(group.intervals());
        known.add("none");
        problems.unknown(
                "unknown-interval",
                group.pointer() + Pointer.of("crossovers", pattern),
                "pattern of the intervals " + String.join(", ", group.intervals()) + " in map order",
                pattern,
                known);
    }

    /** Sex chromosomes of one kind, and numbers that fit. */
    void meaning() {
        Map<Sex, LinkageGroup> heterogametic = new LinkedHashMap<>();
        for (LinkageGroup group : model.groups.values()) {
            group.transmission().heterogametic().ifPresent(sex -> {
                heterogametic.putIfAbsent(sex, group);
                LinkageGroup other = heterogametic.get(sex.other());
                if (other != null) {
                    problems.add(
                            "mixed-sex-chromosomes",
                            group.pointer() + "/transmission",
                            "linkage group \"" + group.id() + "\" is on the "
                                    + group.transmission().word() + ", but \"" + other.id() + "\" on the "
                                    + other.transmission().word(),
                            "either X and Y or Z and W");
                }
            });
            if (group.recombination() instanceof Recombination.Fractions fractions) {
                fractions(group, fractions);
            } else if (group.recombination() instanceof Recombination.Crossovers table) {
                crossovers(group, table);
            }
        }
    }

    private void fractions(LinkageGroup group, Recombination.Fractions fractions) {
        String at = group.pointer() + "/recombination";
        Transmission way = group.transmission();
        if (fractions.female().equals(fractions.male())) {
            fractions(group, fractions.female(), at);
            return;
        }
        for (Sex sex : Sex.values()) {
            fractions(group, fractions.of(sex), at + "/" + sex.word());
            if (way.strands(sex) < 2 && way.recombines()) {
                problems.add(
                        "nothing-recombines",
                        at + "/" + sex.word(),
                        sex.word() + "s have one strand of the " + way.word() + ", so nothing recombines in them",
                        "one list of fractions, those of " + sex.other().word() + "s");
            }
        }
    }

    private void fractions(LinkageGroup group, List<Probability> fractions, String at) {
        int intervals = group.transmission().recombines() ? group.loci().size() - 1 : 0;
        if (fractions.size() != intervals) {
            problems.add(
                    group.transmission().recombines() ? "interval-count" : "nothing-recombines",
                    at,
                    "linkage group \"" + group.id() + "\" has " + count(fractions.size(), "recombination fraction")
                            + (group.transmission().recombines()
                                    ? " for " + count(intervals, "interval") + " between its loci"
                                    : ", but loci on one strand never recombine"),
                    intervals == 0 ? "none" : count(intervals, "fraction") + " for " + group.intervals());
        }
        for (int i = 0; i < fractions.size(); i++) {
            if (fractions.get(i).compareTo(HALF) > 0) {
                problems.add(
                        "fraction-range",
                        at + "/" + i,
                        fractions.get(i) + " is no recombination fraction",
                        "0 (never separated) to 1/2 (independent)");
            }
        }
    }

    private static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }

    private void crossovers(LinkageGroup group, Recombination.Crossovers table) {
        String at = group.pointer() + "/crossovers";
        List<String> intervals = group.intervals();
        if (!group.transmission().recombines()) {
            problems.add(
                    "nothing-recombines",
                    at,
                    "linkage group \"" + group.id() + "\" has crossovers, but loci on one strand never recombine",
                    "none");
        }
        if (intervals.size() > LinkageGroup.MOST_IN_PATTERNS) {
            problems.add(
                    "too-many-intervals",
                    at,
                    "patterns of " + intervals.size() + " intervals cannot be told apart",
                    "at most " + LinkageGroup.MOST_IN_PATTERNS + ", or recombination fractions");
        }
        Optional<String> twice = firstTwice(intervals);
        twice.ifPresent(name -> problems.add(
                "ambiguous-interval",
                at,
                "two intervals of linkage group \"" + group.id() + "\" are named " + name,
                "ids of loci that keep them apart"));
        String total = Probability.total(table.patterns().values());
        if (!total.equals("1")) {
            problems.add(
                    "crossovers-sum",
                    at,
                    "the chances of the patterns of crossovers sum to " + total,
                    "chances that sum to exactly 1");
        }
    }

    private static Optional<String> firstTwice(List<String> names) {
        List<String> seen = new ArrayList<>();
        return names.stream()
                .filter(name -> {
                    boolean known = seen.contains(name);
                    seen.add(name);
                    return known;
                })
                .findFirst();
    }
}
