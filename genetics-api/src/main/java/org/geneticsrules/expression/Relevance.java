package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;

/**
 * Which loci, which statements about viability, and whether the sex bear on a question about the kits counted at some point.
 *
 * <p>Losses at loci of another linkage group change no share of what is asked, unless both depend on the sex. So statements enter at
 * loci of the groups of loci that bear on the question and, where it depends on the sex, all that depend on the sex too; and that is
 * repeated with what entered, until nothing does.
 */
final class Relevance {

    private final Model model;
    private final Set<String> loci;
    private final List<Viability> viability = new ArrayList<>();
    private boolean sex;

    private Relevance(Model model, Reads reads, Set<String> also) {
        this.model = model;
        this.loci = new LinkedHashSet<>(reads.loci());
        loci.addAll(also);
        this.sex = reads.sex() || loci.stream().map(model::locus).anyMatch(Relevance::dependsOnSex);
    }

    static Relevance of(Model model, Reads reads, Census census) {
        return of(model, reads, census, ImmutableSet.of());
    }

    /** What bears on a question and on some loci beside it. */
    static Relevance of(Model model, Reads reads, Census census, Set<String> also) {
        Relevance relevance = new Relevance(model, reads, also);
        List<Viability> left = new ArrayList<>(model.viability().values());
        left.removeIf(one -> !loses(one, census));
        while (left.removeIf(relevance::enters)) {
            // what entered may let others enter
        }
        relevance.viability.sort((one, other) -> Integer.compare(relevance.rank(one), relevance.rank(other)));
        return relevance;
    }

    /** Loci that bear on the question, in model order. */
    ImmutableSet<String> loci() {
        return model.loci().keySet().stream().filter(loci::contains).collect(ImmutableSet.toImmutableSet());
    }

    /** Statements about viability that do, in declared order. */
    List<Viability> viability() {
        return ImmutableList.copyOf(viability);
    }

    /** Whether the sex does. */
    boolean sex() {
        return sex;
    }

    static boolean dependsOnSex(Locus locus) {
        return locus.dependsOnSex() || locus.transmission().heterogametic().isPresent();
    }

    private static boolean loses(Viability one, Census census) {
        return switch (census) {
            case CONCEIVED -> false;
            case BORN -> !one.birth().isOne();
            case SCORED -> !one.birth().isOne() || !one.scored().isOne();
        };
    }

    private boolean enters(Viability one) {
        Locus locus = model.locus(one.locus());
        boolean bySex = one.sex().isPresent() || dependsOnSex(locus);
        boolean linked = loci.contains(locus.id())
                || model.groupOf(locus.id()).map(LinkageGroup::loci).orElse(List.of()).stream()
                        .anyMatch(loci::contains);
        if (linked || (sex && bySex)) {
            loci.add(locus.id());
            sex |= bySex;
            viability.add(one);
            return true;
        }
        return false;
    }

    private int rank(Viability one) {
        return ImmutableList.copyOf(model.viability().keySet()).indexOf(one.id());
    }
}
