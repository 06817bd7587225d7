package org.geneticsrules.benchmarks;

import java.util.ArrayList;
import java.util.List;

/** Which goals are met, and what limits the others. */
final class GoalsSection implements Section {

    @Override
    public String run() {
        return "mating";
    }

    @Override
    public void write(Measurements run, Page page) {
        page.say("## Goals of this project\n\n");
        page.head("goal", "measured", "met");
        List<String> limits = new ArrayList<>();
        List<Goals.Goal> goals = new Goals(run).all();
        for (Goals.Goal goal : goals) {
            page.row(goal.text(), goal.measured(), goal.met() ? "yes" : "**no**");
            if (!goal.met() && !limits.contains(goal.limit())) {
                limits.add(goal.limit());
            }
        }
        long met = goals.stream().filter(Goals.Goal::met).count();
        page.say("\n" + met + " of " + goals.size() + " goals are met.");
        page.say(limits.isEmpty() ? "\n\n" : " What limits the rest:\n\n");
        limits.forEach(limit -> page.say("* " + limit + "\n"));
        page.say(limits.isEmpty() ? "" : "\n");
    }
}
