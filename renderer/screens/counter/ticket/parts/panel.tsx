/** The one form open at the right of a ticket. */
import type { PanelName } from '../panel-names.ts';
import { AccountYesPanel } from '../panels/account-yes-panel.tsx';
import { AddWorkPanel } from '../panels/add-work-panel.tsx';
import { AnswerPanel } from '../panels/answer-panel.tsx';
import { CallPanel } from '../panels/call-panel.tsx';
import { CeilingPanel } from '../panels/ceiling-panel.tsx';
import { DeclinePanel } from '../panels/decline-panel.tsx';
import { EstimatePanel } from '../panels/estimate-panel.tsx';
import { FieldsPanel } from '../panels/fields-panel.tsx';
import { HoldPanel } from '../panels/hold-panel.tsx';
import { PartPanel } from '../panels/part-panel.tsx';
import { PhotosPanel } from '../panels/photos-panel.tsx';
import { PromisePanel } from '../panels/promise-panel.tsx';
import { SignPanel } from '../panels/sign-panel.tsx';
import type { PanelProps, TicketCasting } from '../ticket-shapes.ts';

export function Panel({
  ticket,
  chosen,
  name,
  onPanel,
  onDone,
}: PanelProps & Readonly<{ chosen: TicketCasting | undefined; name: PanelName; onPanel: (name: PanelName) => void }>) {
  switch (name) {
    case 'answer':
      return <AnswerPanel ticket={ticket} onDone={onDone} />;
    case 'call':
      return <CallPanel ticket={ticket} onDone={onDone} />;
    case 'ceiling':
      return <CeilingPanel ticket={ticket} onDone={onDone} />;
    case 'estimate':
      return <EstimatePanel ticket={ticket} onDone={onDone} />;
    case 'promise':
      return <PromisePanel ticket={ticket} onDone={onDone} />;
    case 'sign':
      return <SignPanel ticket={ticket} onDone={onDone} />;
    case 'fields':
      return <FieldsPanel ticket={ticket} onDone={onDone} onDecline={() => onPanel('decline')} />;
    case 'add-work':
      return <AddWorkPanel ticket={ticket} casting={chosen} onDone={onDone} />;
    case 'part':
      return <PartPanel ticket={ticket} casting={chosen} onDone={onDone} />;
    case 'photos':
      return <PhotosPanel ticket={ticket} casting={chosen} onDone={onDone} />;
    case 'hold':
      return <HoldPanel ticket={ticket} casting={chosen} onDone={onDone} />;
    case 'account-yes':
      return <AccountYesPanel ticket={ticket} onDone={onDone} />;
    case 'decline':
      return <DeclinePanel ticket={ticket} onDone={onDone} />;
  }
}
